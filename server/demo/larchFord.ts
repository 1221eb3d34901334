import type { Bridge } from '#domain/bridge/bridge.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import type { TaskRun } from '#domain/forecast/course.ts';
import type { CommandBody } from '#domain/progress/command.ts';
import type { Work } from '#domain/tasks/work.ts';
import type { FirstPlan } from './firstPlan.ts';
import { playTimes } from './playTimes.ts';
import type { Story } from './story.ts';

/** Invented, like everything in the demo. */
const chiefs: Readonly<Record<string, string>> = {
  command: 'Lt Orla Venn',
  left: 'Cpl Tam Ashby',
  right: 'Cpl Ines Roke',
  bracing: 'Cpl Jory Pell',
  rollers: 'Cpl Bea Lunt',
  stores: 'Cpl Wim Darrow',
  far: 'Cpl Nell Stroud',
};

/** Minutes after the start at which traffic is asked for by day: 17:00 for a start at 11:30. */
const usuallyAsked = 330;

/** The load that the story keeps on the road: deck planks without which the nose must not be landed. */
const lateLoad = 'load-5';

/** Minutes after the start at which it is due by the order of a build by day, and how late it was told to be. */
const usuallyDue = 127;
const lateBy = 25;

/** Loads that have not come in the story. */
export const missingLoads: ReadonlySet<string> = new Set([lateLoad, 'load-6']);

/**
 * When the demo build starts, and how many minutes later the load is due that the story keeps on the road, and traffic is
 * asked for; as by day when absent.
 */
export type When = {
  readonly start: Date;
  readonly lateLoadDue?: number;
  readonly askedAfter?: number;
};

/** The order that opens the demo build at Larch Ford. */
export function larchFordOpening(
  parts: When & {
    readonly program: string;
    readonly ground: Ground;
    readonly bridge: Bridge;
    readonly work: Work;
  },
): CommandBody<'open-build'> {
  const { start, lateLoadDue = usuallyDue, askedAfter = usuallyAsked } = parts;
  const { program, ground, bridge, work } = parts;
  return {
    name: 'Larch Ford',
    unit: '2 Platoon, flood relief',
    start: start.toISOString(),
    askedFor: new Date(start.getTime() + askedAfter * 60_000).toISOString(),
    zone: ground.zone,
    confidence: 0.9,
    program,
    ground,
    bridge,
    work: {
      ...work,
      loads: work.loads.map((load) =>
        load.id === lateLoad ? { ...load, arrives: lateLoadDue } : load,
      ),
      crews: work.crews.map((crew) => {
        const chief = chiefs[crew.id];
        return chief ? { ...crew, chief } : crew;
      }),
    },
  };
}

/** What happened at Larch Ford up to the moment at which the demo opens: beside the tasks, as they were played. */
export function larchFordStory(
  opening: CommandBody<'open-build'>,
  { work, plan }: FirstPlan,
): Story {
  const runs = new Map(playTimes(work, plan, missingLoads).map((run) => [run.task, run]));
  return {
    opening,
    work,
    plan,
    missing: missingLoads,
    storesCrew: 'stores',
    inspector: 'SSgt Ruth Calder',
    lookouts: {
      near: { name: 'Sgt Piet Holm', people: 34 },
      far: { name: 'Cpl Nell Stroud', people: 4 },
    },
    asides: [
      {
        minutes: runs.get('ready-1')!.start,
        kind: 'tell-water',
        body: { rise: 0.04, level: null },
      },
      {
        minutes: halfWay(runs.get('brace-3')!),
        kind: 'tell-hurt',
        body: { crew: 'bracing', what: 'hand bruised between brace and panel', outOfWork: true },
        crew: 'bracing',
      },
      {
        minutes: opening.work.loads.find(({ id }) => id === lateLoad)!.arrives,
        kind: 'tell-load-late',
        body: { load: lateLoad, minutes: lateBy, why: 'held at the rail crossing' },
        crew: 'stores',
      },
    ],
  };
}

function halfWay({ start, finish }: TaskRun): number {
  return (start + finish) / 2;
}
