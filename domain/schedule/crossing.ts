import type { Task } from '../tasks/task.ts';
import type { Manning } from './manning.ts';

/** A bank of the gap on which all work of a task in zones with a bank is done; null where it is on both or on none. */
export type BankSide = 'near' | 'far' | null;

export function bankOf({ zones }: Manning, task: Task): BankSide {
  const banks = new Set(task.zones.map((zone) => zones.get(zone)?.bank));
  return banks.has('near') === banks.has('far') ? null : banks.has('near') ? 'near' : 'far';
}

/** Seconds that people take from one bank to the other; 0 where they take none, or nobody counts people. */
export function crossingSeconds({ work, crews }: Manning): number {
  return crews ? Math.round((work.crossing ?? 0) * 60) : 0;
}
