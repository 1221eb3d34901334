import type { Task } from '../tasks/task.ts';
import type { Work, Zone } from '../tasks/work.ts';

/** A bank of the gap on which all work of a task in zones with a bank is done; null where it is on both or on none. */
export type BankSide = 'near' | 'far' | null;

type Zones = ReadonlyMap<string, Zone>;

export function bankOf(zones: Zones, task: Task): BankSide {
  const banks = new Set(task.zones.map((zone) => zones.get(zone)?.bank));
  return banks.has('near') === banks.has('far') ? null : banks.has('near') ? 'near' : 'far';
}

/** Seconds that people take from one bank to the other; 0 where they take none, or there is work on one bank alone. */
export function crossingSeconds({ tasks, crossing = 0 }: Work, zones: Zones): number {
  const banks = new Set(crossing > 0 ? tasks.map((task) => bankOf(zones, task)) : []);
  return banks.has('near') && banks.has('far') ? Math.round(crossing * 60) : 0;
}
