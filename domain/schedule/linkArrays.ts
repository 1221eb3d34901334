import { topologicalOrder } from '../tasks/graph.ts';
import type { Work } from '../tasks/work.ts';

/**
 * The links of an order of work in flat arrays. Tasks are numbered so that links only lead from a lower to a higher
 * number; `rows[number]` is the task's row in `work.tasks`. The links into task `t` stand at `beforeHead[t]` up to
 * `beforeHead[t + 1]` in the `before...` arrays, those out of it likewise in the `after...` arrays. Waits in seconds.
 */
export type LinkArrays = {
  readonly rows: Int32Array;
  readonly numbers: ReadonlyMap<string, number>;
  readonly beforeHead: Int32Array;
  readonly before: Int32Array;
  readonly beforeFromStart: Uint8Array;
  readonly beforeWait: Float64Array;
  readonly afterHead: Int32Array;
  readonly after: Int32Array;
  readonly afterFromStart: Uint8Array;
  readonly afterWait: Float64Array;
};

/** Lays out the links of work that `workFaults` finds nothing wrong with. Throws on a loop. */
export function linkArrays(work: Work): LinkArrays {
  const order = topologicalOrder(work);
  if (!order) {
    throw new Error('linkArrays: the order has a loop');
  }
  const rowOf = new Map(work.tasks.map((task, row) => [task.id, row]));
  const numbers = new Map(order.map((id, number) => [id, number]));
  const count = order.length;
  const size = work.links.length;
  const arrays = {
    rows: Int32Array.from(order, (id) => rowOf.get(id) as number),
    numbers,
    beforeHead: new Int32Array(count + 1),
    before: new Int32Array(size),
    beforeFromStart: new Uint8Array(size),
    beforeWait: new Float64Array(size),
    afterHead: new Int32Array(count + 1),
    after: new Int32Array(size),
    afterFromStart: new Uint8Array(size),
    afterWait: new Float64Array(size),
  };
  const ends = work.links.map((link) => ({
    from: numbers.get(link.from) as number,
    to: numbers.get(link.to) as number,
    fromStart: link.counts === 'start' ? 1 : 0,
    wait: Math.round(link.wait * 60),
  }));
  for (const { from, to } of ends) {
    arrays.beforeHead[to + 1]! += 1;
    arrays.afterHead[from + 1]! += 1;
  }
  for (let at = 0; at < count; at += 1) {
    arrays.beforeHead[at + 1]! += arrays.beforeHead[at]!;
    arrays.afterHead[at + 1]! += arrays.afterHead[at]!;
  }
  const nextBefore = arrays.beforeHead.slice();
  const nextAfter = arrays.afterHead.slice();
  for (const { from, to, fromStart, wait } of ends) {
    const b = nextBefore[to]!;
    nextBefore[to] = b + 1;
    arrays.before[b] = from;
    arrays.beforeFromStart[b] = fromStart;
    arrays.beforeWait[b] = wait;
    const a = nextAfter[from]!;
    nextAfter[from] = a + 1;
    arrays.after[a] = to;
    arrays.afterFromStart[a] = fromStart;
    arrays.afterWait[a] = wait;
  }
  return arrays;
}
