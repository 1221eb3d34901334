import type { Bridge } from '../../bridge/bridge.ts';
import type { Kit } from '../../kit/kit.ts';
import type { HoldTemplate, Limit, TaskTemplate } from '../../kit/order.ts';
import type { Measure } from '../hold.ts';
import type { Task } from '../task.ts';
import { effectOf, placeOf } from './effects.ts';
import { fill } from './fill.ts';
import { type CarriedLoad, loadsCarrying } from './loads.ts';
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

function measuresOf(
  hold: HoldTemplate,
  repetition: Repetition,
  bridge: Bridge,
  kit: Kit,
): Measure[] {
  const measures: Measure[] = [];
  for (const { least, most, ...measure } of hold.measures) {
    const from = least === undefined ? undefined : limitOf(least, repetition, bridge, kit);
    const to = most === undefined ? undefined : limitOf(most, repetition, bridge, kit);
    const countsNothing = (least === 'bays' || least === 'decked') && from === 0;
    if (!countsNothing) {
      measures.push({
        ...measure,
        ...(from === undefined ? {} : { least: from }),
        ...(to === undefined ? {} : { most: to }),
      });
    }
  }
  return measures;
}

function limitOf(limit: Limit, repetition: Repetition, bridge: Bridge, kit: Kit): number {
  const stage = bridge.stages.find((one) => one.stage === repetition.stage);
  switch (limit) {
    case 'bays':
      return stage?.bays ?? bridge.bays;
    case 'decked':
      return stage?.decked.length ?? 0;
    case 'margin':
      return kit.launch?.margin ?? 0;
    case 'bearing-near':
      return kit.bearing.near;
    case 'bearing-far':
      return kit.bearing.far;
    default:
      return limit;
  }
}
