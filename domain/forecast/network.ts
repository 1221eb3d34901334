import { openingTasks } from '../schedule/opening.ts';
import type { Plan } from '../schedule/plan.ts';
import type { Work } from '../tasks/work.ts';
import type { Outlook } from './outlook.ts';

/**
 * Links, hand-overs and releases in flat arrays. A moment is numbered 2 x position for a task's start
 * and one more for its finish. Arcs `arcAt[position]` to `arcAt[position + 1]` lead into that task.
 */
export type Network = {
  readonly count: number;
  /** Positions, each after all it waits for. */
  readonly order: Int32Array;
  readonly arcAt: Int32Array;
  /** The moment an arc counts from. */
  readonly arcFrom: Int32Array;
  readonly arcWait: Float64Array;
  readonly from: Float64Array;
  readonly leastFinish: Float64Array;
  /** True start of a task under way or done; NaN for one to come. */
  readonly startedAt: Float64Array;
  /** Positions of the tasks of which the last to finish is the opening: one, where a task opens. */
  readonly goals: Int32Array;
  /** The one of them that finishes last by plan. */
  readonly opening: number;
};

type Arc = { readonly from: number; readonly to: number; readonly wait: number };

/** Lays the network out for the runs. Throws when links and hand-overs name unknown tasks or make a loop. */
export function compileNetwork(work: Work, plan: Plan, outlooks: readonly Outlook[]): Network {
  const count = work.tasks.length;
  const positions = new Map(work.tasks.map((task, position) => [task.id, position]));
  const positionOf = (task: string): number => {
    const position = positions.get(task);
    if (position === undefined) throw new Error(`There is no task ${task} in the work.`);
    return position;
  };
  // Links come first: where a link and a hand-over bind alike, the chain goes along the link.
  const arcs: Arc[] = [
    ...work.links.map(({ from, to, counts, wait }) => {
      const moment = 2 * positionOf(from) + (counts === 'finish' ? 1 : 0);
      return { from: moment, to: positionOf(to), wait };
    }),
    ...plan.handOvers.map(({ from, to, wait = 0 }) => ({
      from: 2 * positionOf(from) + 1,
      to: positionOf(to),
      wait,
    })),
  ].filter(({ to }) => outlooks[to]!.waits);
  return {
    count,
    order: topologicalOrder(count, arcs),
    ...flatten(count, arcs),
    from: Float64Array.from(outlooks, (outlook) => outlook.from),
    leastFinish: Float64Array.from(outlooks, (outlook) => outlook.leastFinish),
    startedAt: Float64Array.from(outlooks, (outlook) => outlook.startedAt ?? Number.NaN),
    goals: Int32Array.from(openingTasks(work), positionOf),
    opening: positionOf(plan.opening),
  };
}

/** Arcs sorted by the task they lead into, their order kept (a counting sort). */
function flatten(count: number, arcs: readonly Arc[]) {
  const arcAt = new Int32Array(count + 1);
  for (const { to } of arcs) arcAt[to + 1]!++;
  for (let position = 0; position < count; position++) arcAt[position + 1]! += arcAt[position]!;
  const arcFrom = new Int32Array(arcs.length);
  const arcWait = new Float64Array(arcs.length);
  const next = arcAt.slice(0, count);
  for (const { from, to, wait } of arcs) {
    const at = next[to]!++;
    arcFrom[at] = from;
    arcWait[at] = wait;
  }
  return { arcAt, arcFrom, arcWait };
}

/** Iterative (Kahn, Communications of the ACM 5(11), 1962), because chains may be thousands of tasks long. */
function topologicalOrder(count: number, arcs: readonly Arc[]): Int32Array {
  const waitingFor = new Int32Array(count);
  const followers: number[][] = Array.from({ length: count }, () => []);
  for (const { from, to } of arcs) {
    followers[from >> 1]!.push(to);
    waitingFor[to]!++;
  }
  const order = new Int32Array(count);
  let filled = 0;
  for (let task = 0; task < count; task++) if (waitingFor[task] === 0) order[filled++] = task;
  for (let read = 0; read < filled; read++) {
    for (const follower of followers[order[read]!]!) {
      waitingFor[follower]!--;
      if (waitingFor[follower] === 0) order[filled++] = follower;
    }
  }
  if (filled < count) throw new Error('Links and hand-overs make a loop.');
  return order;
}
