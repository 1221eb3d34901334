import type { Bridge } from '../../bridge/bridge.ts';
import type { Kit } from '../../kit/kit.ts';
import type { TaskTemplate } from '../../kit/order.ts';
import type { Task } from '../task.ts';
import { effectOf, placeOf } from './effects.ts';
import { fill } from './fill.ts';
import { type CarriedLoad, loadsCarrying } from './loads.ts';
import { measuresOf } from './measures.ts';
import type { Repetition } from './repetition.ts';

/** The task of one repetition. Its number and what its hold sends back are set once all tasks are known. */
export function makeTask(
  template: TaskTemplate,
  repetition: Repetition,
  site: {
    readonly kit: Kit;
    readonly bridge: Bridge;
    readonly loads: readonly CarriedLoad[];
  },
): Task {
  const { kit, bridge } = site;
  const filled = (text: string) => fill(text, repetition, bridge);
  const effect = template.effect ? effectOf(template.effect, repetition, bridge) : null;
  return {
    id: filled(template.makes),
    number: 1,
    name: filled(template.name),
    phase: template.phase,
    needs: template.needs.map((need) => ({
      anyOf: need.anyOf.map(filled),
      people: need.people,
      ...(need.skill === undefined ? {} : { skill: need.skill }),
    })),
    minutes: template.minutes,
    zones: template.zones.map(filled),
    keepOff: template.keepOff ?? false,
    ...(template.hold
      ? {
          hold: {
            measures: measuresOf(template.hold, repetition, bridge, kit),
            lapsesOn: template.hold.lapsesOn,
            redo: [],
          },
        }
      : {}),
    opens: template.opens ?? false,
    cautions: template.cautions,
    tools: template.tools.map(filled),
    loads: loadsFor(template, repetition, site.loads),
    place: placeOf(template, repetition),
    ...(effect ? { effect } : {}),
  };
}

/** Its own load for a task about a load, and those that carry what it uses. */
function loadsFor(
  template: TaskTemplate,
  repetition: Repetition,
  loads: readonly CarriedLoad[],
): string[] {
  const used = (template.uses ?? []).flatMap((group) =>
    loadsCarrying(loads, group, repetition.bays),
  );
  const all = repetition.load ? [repetition.load, ...used] : used;
  return [...new Set(all.map(({ id }) => id))];
}
