import { useId } from 'react';
import { Patterns } from './Patterns.tsx';
import './drawing.css';

type Props = {
  /** Minutes, above 0 earlier: at four in five, and at even chance. */
  readonly gain80: number;
  readonly gain50: number;
  /** Minutes to the edge of the drawing. */
  readonly most: number;
};

const half = 100;

/** One gain or loss about a post "as it is": earlier to the left in outline, later to the right in hatch; a tick at even chance. */
export function ShiftBar({ gain80, gain50, most }: Props) {
  const id = useId();
  const x = (gain: number): number =>
    half - (Math.max(-most, Math.min(most, gain)) / Math.max(most, 1)) * (half - 3);
  const [from, to] = [Math.min(half, x(gain80)), Math.max(half, x(gain80))];
  return (
    <svg className="shift-bar" viewBox={`0 0 ${2 * half} 18`} aria-hidden="true">
      <Patterns id={id} />
      <line className="d-hair" x1={0} x2={2 * half} y1={9} y2={9} />
      <rect
        className={gain80 >= 0 ? 'd-open' : 'd-at-work'}
        fill={gain80 >= 0 ? undefined : `url(#${id}-hatch)`}
        x={from}
        y={4}
        width={to - from}
        height={10}
      />
      <line className="d-line" x1={x(gain50)} x2={x(gain50)} y1={0} y2={18} />
      <line className="d-heavy" x1={half} x2={half} y1={0} y2={18} />
    </svg>
  );
}
