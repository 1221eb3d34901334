import type { TaskStatus } from '#domain/progress/state.ts';
import type { SpanView } from './spanView.ts';

type Props = {
  /** Scales, and the prefix of ids inside this drawing. */
  readonly view: Pick<SpanView, 'x' | 'y' | 'id'>;
  readonly from: number;
  readonly to: number;
  readonly status: TaskStatus;
  /** Lower and upper edge at each end, metres. */
  readonly left: readonly [number, number];
  readonly right: readonly [number, number];
  readonly slender?: boolean;
};

/** One bay or nose section: a braced panel when done, hatched at work, dashed to come. */
export function GirderPanel({ view, from, to, status, left, right, slender = false }: Props) {
  const { x, y, id } = view;
  const gap = slender ? 0 : Math.min(1.5, (x(to) - x(from)) / 14);
  const x1 = x(from) + gap;
  const x2 = x(to) - gap;
  const [l0, l1, r0, r1] = [y(left[0]), y(left[1]), y(right[0]), y(right[1])];
  const outline = `M${x1} ${l0}L${x1} ${l1}L${x2} ${r1}L${x2} ${r0}Z`;
  if (status === 'to-come') return <path className="d-to-come" d={outline} />;
  if (status !== 'done') {
    return <path className={`d-${status}`} fill={`url(#${id}-hatch)`} d={outline} />;
  }
  const middle = (x1 + x2) / 2;
  const narrow = x2 - x1 < 14;
  if (narrow) return <path className={slender ? 'd-line' : 'd-done'} d={outline} />;
  return (
    <g>
      <path className="d-paper" d={outline} />
      <path
        className={slender ? 'd-line' : 'd-chord'}
        d={`M${x1} ${l0}L${x2} ${r0}M${x1} ${l1}L${x2} ${r1}`}
      />
      <path
        className={slender ? 'd-thin' : 'd-line'}
        d={`M${x1} ${l0}V${l1}M${x2} ${r0}V${r1}M${x1} ${l0}L${middle} ${(l1 + r1) / 2}L${x2} ${r0}`}
      />
    </g>
  );
}
