import type { Kit, Part } from '../../kit/kit.ts';
import type { Use } from '../../tasks/fromKit/uses.ts';
import type { Bridge } from '../bridge.ts';

/** Parts that are wanted together, and the first task that wants them. */
export type Lot = {
  readonly group: string;
  /** The bay or section they are for; null for the whole bridge. */
  readonly of: number | null;
  readonly task: string;
  readonly parts: readonly { readonly part: Part; readonly count: number }[];
};

/**
 * All parts of a bridge in the order in which the work first uses them: bay by bay and section by section where they
 * are counted so. Groups that no task uses come last, with no task.
 */
export function lotsInOrder(bridge: Bridge, kit: Kit, uses: readonly Use[]): Lot[] {
  const lots = new Map<string, Lot>();
  const add = (group: string, of: number | null, task: string) => {
    const key = `${group} ${of}`;
    const parts = kit.parts
      .filter((part) => part.group === group)
      .map((part) => ({ part, count: part.count }));
    if (!lots.has(key) && parts.length > 0) {
      lots.set(key, { group, of, task, parts });
    }
  };
  const per = new Map(kit.parts.map((part) => [part.group, part.per]));
  const all = (group: string) => {
    const count = per.get(group) === 'bay' ? bridge.bays : bridge.nose;
    return Array.from({ length: count }, (_, at) => at + 1);
  };
  for (const { group, bays, sections, task } of uses) {
    if (per.get(group) === 'bridge') {
      add(group, null, task);
    } else {
      const named = per.get(group) === 'bay' ? bays : sections;
      for (const of of named ?? all(group)) {
        add(group, of, task);
      }
    }
  }
  for (const [group, counted] of per) {
    for (const of of counted === 'bridge' ? [null] : all(group)) {
      add(group, of, '');
    }
  }
  return [...lots.values()];
}
