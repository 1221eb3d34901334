import type { Bridge } from '../../bridge/bridge.ts';
import type { Kit } from '../../kit/kit.ts';
import { type Refusal, refusal } from '../../refusal.ts';
import { bad, good, type Result } from '../../result.ts';
import { findLoop, topologicalOrder } from '../graph.ts';
import type { Link, Work } from '../work.ts';
import { expand } from './expand.ts';
import { withoutShortcuts } from './shortcuts.ts';

/**
 * The whole order of work of a bridge: every task with its people, minutes, zones, holds, cautions, stores and what it
 * comes after, from the kit's template. Tasks stand and are numbered from 1 as the work would run with people enough
 * and likely minutes.
 *
 * Refuses when the kit is not the one the bridge was designed for, and when its order does not hold together for this
 * bridge (`readKit` finds that for every length before).
 */
export function orderOfWork(bridge: Bridge, kit: Kit): Result<Work, Refusal> {
  if (bridge.kit.name !== kit.name) {
    const sentence = `The bridge is of kit ${bridge.kit.name} and the order of work of kit ${kit.name}: take the kit it was designed with.`;
    return bad(refusal('kit-unknown', sentence, [bridge.kit.name, kit.name]));
  }
  const { work, faults } = expand(bridge, kit);
  const [fault] = faults;
  if (fault) {
    const sentence = `The order of work of kit ${kit.name} does not hold together for ${bridge.bays} bays: at ${fault.path} found ${fault.found}, expected ${fault.expected}. Mend the kit file.`;
    return bad(refusal('work-faulty', sentence));
  }
  const loop = findLoop(work);
  if (loop) {
    const sentence = `The order of work of kit ${kit.name} goes round in a circle: ${loop.join(', ')}. Mend the kit file.`;
    return bad(refusal('loop-in-order', sentence, loop));
  }
  return good(inOrder({ ...work, links: withoutShortcuts(work) }));
}

/** Sorts by earliest start with likely minutes and stores as they come, then as the kit writes them; and numbers. */
function inOrder(work: Work): Work {
  const starts = earliestStarts(work);
  const startOf = (id: string) => starts.get(id) ?? 0;
  const tasks = work.tasks
    .toSorted((a, b) => startOf(a.id) - startOf(b.id))
    .map((task, at) => ({ ...task, number: at + 1 }));
  return { ...work, tasks };
}

function earliestStarts(work: Work): Map<string, number> {
  const tasks = new Map(work.tasks.map((task) => [task.id, task]));
  const arrivals = new Map(work.loads.map(({ id, arrives }) => [id, arrives]));
  const into = new Map(work.tasks.map(({ id }): [string, Link[]] => [id, []]));
  for (const link of work.links) {
    into.get(link.to)?.push(link);
  }
  const starts = new Map<string, number>();
  for (const id of topologicalOrder(work) ?? []) {
    const stores = (tasks.get(id)?.loads ?? []).map((load) => arrivals.get(load) ?? 0);
    const links = (into.get(id) ?? []).map(({ from, counts, wait }) => {
      const minutes = counts === 'finish' ? (tasks.get(from)?.minutes.likely ?? 0) : 0;
      return (starts.get(from) ?? 0) + minutes + wait;
    });
    starts.set(id, Math.max(0, ...stores, ...links));
  }
  return starts;
}
