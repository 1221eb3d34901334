import type { Minutes } from '#domain/tasks/task.ts';
import './drawing.css';

type Props = {
  readonly was: Minutes;
  readonly is: Minutes;
  /** Minutes at the right edge. */
  readonly most: number;
};

const width = 200;

/** Two three-point estimates on one scale from 0: the old one dashed, the new one solid, a stroke at likely. */
export function ThreePoints({ was, is, most }: Props) {
  const x = (minutes: number): number => 1 + (minutes / Math.max(most, 1)) * (width - 2);
  return (
    <svg className="three-points" viewBox={`0 0 ${width} 24`} aria-hidden="true">
      <line className="d-hair" x1={1} x2={1} y1={0} y2={24} />
      <path className="d-dashed" d={`M${x(was.quick)} 7H${x(was.slow)}M${x(was.likely)} 2V12`} />
      <path className="d-line" d={`M${x(is.quick)} 17H${x(is.slow)}M${x(is.likely)} 11V23`} />
    </svg>
  );
}
