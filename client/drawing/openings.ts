/** One opening as a dot: where, how far up its pile, and whether it comes after the time asked for. */
export type Dot = { readonly column: number; readonly row: number; readonly late: boolean };

export type Piles = {
  readonly dots: readonly Dot[];
  /** Left edge of column 0, in minutes after the start. */
  readonly from: number;
  readonly columnMinutes: number;
  readonly columns: number;
  readonly highest: number;
  /** Edge at which the post stands, in columns; null when nothing was asked or it lies off the strip. */
  readonly post: number | null;
  /** The time asked for lies so far from every opening that it is only pointed at. */
  readonly askedOff: 'before' | 'after' | null;
};

/**
 * Piles equally likely openings (minutes after the start) into columns of equal width. A column never straddles the
 * time asked for, so that every dot stands on its true side of the post.
 */
export function pileOpenings(
  openings: readonly number[],
  asked: number | null,
  columns: number,
): Piles {
  const first = Math.min(...openings);
  const last = Math.max(...openings);
  const spread = Math.max(20, last - first);
  const near = asked !== null && asked > first - 1.5 * spread && asked < last + 1.5 * spread;
  const low = near ? Math.min(first, asked) : first;
  const high = near ? Math.max(last, asked) : last;
  // One empty column at each end, and one to spare because the edges are shifted to the post.
  const columnMinutes = Math.max(20, high - low) / (columns - 3);
  const anchor = near ? asked : low;
  const from = anchor - Math.ceil((anchor - low) / columnMinutes + 1) * columnMinutes;
  const heights = new Map<number, number>();
  const dots = [...openings]
    .sort((a, b) => a - b)
    .map((opening) => {
      const late = asked !== null && opening > asked;
      // On the post's edge an opening in time belongs to its left.
      const exact = (opening - from) / columnMinutes;
      const column = late ? Math.floor(exact) : Math.max(0, Math.ceil(exact) - 1);
      const row = heights.get(column) ?? 0;
      heights.set(column, row + 1);
      return { column, row, late };
    });
  return {
    dots,
    from,
    columnMinutes,
    columns,
    highest: Math.max(...heights.values()),
    post: near ? Math.round((asked - from) / columnMinutes) : null,
    askedOff: asked === null || near ? null : asked < first ? 'before' : 'after',
  };
}
