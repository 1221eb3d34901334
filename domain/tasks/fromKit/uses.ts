import type { Bridge } from '../../bridge/bridge.ts';
import type { Kit } from '../../kit/kit.ts';
import type { Work } from '../work.ts';
import { fill } from './fill.ts';
import { loadsOf } from './loads.ts';
import { repetitionsOf } from './repetition.ts';

/** A task that uses a group of parts, for those bays or sections; null for parts of the whole bridge. */
export type Use = {
  readonly group: string;
  readonly bays: readonly number[] | null;
  readonly sections: readonly number[] | null;
  readonly task: string;
  /** Number of the task in the order of work. */
  readonly number: number;
};

/** Which tasks use which parts, in the order of work that `orderOfWork` made of the same bridge and kit. */
export function usesOf(bridge: Bridge, kit: Kit, work: Work): Use[] {
  const loads = loadsOf(kit, bridge);
  const numbers = new Map(work.tasks.map(({ id, number }) => [id, number]));
  const uses: Use[] = [];
  for (const template of kit.order) {
    for (const repetition of template.uses ? repetitionsOf(template, bridge, loads) : []) {
      const task = fill(template.makes, repetition, bridge);
      for (const group of template.uses ?? []) {
        const { bays, sections } = repetition;
        uses.push({ group, bays, sections, task, number: numbers.get(task) ?? 0 });
      }
    }
  }
  return uses.sort((a, b) => a.number - b.number);
}
