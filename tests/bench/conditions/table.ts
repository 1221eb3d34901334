import { designBridge } from '#domain/bridge/design.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import { conditionsFactor } from '#domain/forecast/doubt/conditions.ts';
import type { Doubt } from '#domain/forecast/doubt/doubt.ts';
import { usualDoubt } from '#domain/forecast/doubt/usualDoubt.ts';
import type { DarkSpell } from '#domain/forecast/light/lightClock.ts';
import { simulate } from '#domain/forecast/simulate.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import { orderOfWork } from '#domain/tasks/fromKit/orderOfWork.ts';
import type { Work } from '#domain/tasks/work.ts';
import { granted, heron, larchFord } from '#tests/domain/kit/heronKit.ts';

/** A short, a middle and a long gap that the demo kit spans at class 30, metres. */
export const gaps = [10, 20, 31] as const;

/** One way in which a build differs from the same build by day with everything as usual. */
type Condition = {
  readonly name: string;
  /** Whether it opens later than by day, or sooner. */
  readonly opens: 'as by day' | 'later' | 'sooner';
  readonly ground?: (ground: Ground) => Ground;
  readonly work?: (work: Work) => Work;
  /** Fewer or more people than the kit suggests. */
  readonly people?: true;
  readonly doubt?: (doubt: Doubt) => Doubt;
  readonly dark?: readonly DarkSpell[];
};

const night: readonly DarkSpell[] = [{ from: 0, to: 100_000 }];
const on = <Part extends { readonly on: boolean }>(part: Part): Part => ({ ...part, on: true });

/** So many people more or fewer in each of these crews. */
function withPeople(work: Work, crews: readonly string[], more: number): Work {
  const changed = work.crews.map((crew) =>
    crews.includes(crew.id) ? { ...crew, people: crew.people + more } : crew,
  );
  return { ...work, crews: changed };
}

const soft = (bank: Ground['near']) => ({ ...bank, soil: 'soft' as const });
const builders = ['left', 'right', 'bracing', 'rollers', 'stores', 'far'];

/** Every condition of the table, with which way it should move the opening. */
export const conditions: readonly Condition[] = [
  { name: 'by day', opens: 'as by day' },
  { name: 'night', opens: 'later', dark: night },
  {
    name: 'night, work lights',
    opens: 'later',
    dark: night,
    doubt: (doubt) => ({ ...doubt, light: { ...doubt.light, lights: true } }),
  },
  { name: 'rain', opens: 'later', doubt: (doubt) => ({ ...doubt, weather: on(doubt.weather) }) },
  {
    name: 'untrained crews',
    opens: 'later',
    doubt: (doubt) => ({ ...doubt, training: on(doubt.training) }),
  },
  { name: 'bad site', opens: 'later', doubt: (doubt) => ({ ...doubt, site: on(doubt.site) }) },
  {
    name: 'protective dress',
    opens: 'later',
    doubt: (doubt) => ({ ...doubt, dress: on(doubt.dress) }),
  },
  {
    name: 'heat, WBGT 28 C',
    opens: 'later',
    doubt: (doubt) => ({ ...doubt, heat: { ...doubt.heat, on: true, wbgt: 28 } }),
  },
  {
    name: 'both banks soft',
    opens: 'later',
    ground: (ground) => ({ ...ground, near: soft(ground.near), far: soft(ground.far) }),
  },
  {
    name: 'four people fewer',
    opens: 'later',
    people: true,
    // As few as the kit's tasks can be done with at all.
    work: (work) => withPeople(work, ['left', 'right', 'stores', 'command'], -1),
  },
  {
    name: 'trucks an hour late',
    opens: 'later',
    work: (work) => ({
      ...work,
      loads: work.loads.map((load) => ({ ...load, arrives: load.arrives + 60 })),
    }),
  },
  {
    name: 'night, rain, untrained',
    opens: 'later',
    dark: night,
    doubt: (doubt) => ({ ...doubt, weather: on(doubt.weather), training: on(doubt.training) }),
  },
  {
    name: 'two more in each crew',
    opens: 'sooner',
    people: true,
    work: (work) => withPeople(work, builders, 2),
  },
];

/** A build under a condition. Minutes after its start. */
export type Cell = {
  readonly gap: number;
  readonly condition: string;
  readonly opens: Condition['opens'];
  readonly bays: number;
  /** What the condition multiplies all minutes by, light apart. */
  readonly factor: number;
  readonly planned: number;
  readonly p50: number;
  readonly p80: number;
};

export type TableOptions = { readonly runs: number; readonly effort: number };

/** Plans and forecasts a full build of each gap with the demo kit under each condition, all on the same luck. */
export function conditionTable({ runs, effort }: TableOptions): Cell[] {
  return gaps.flatMap((gap) =>
    conditions.map((condition) => {
      const { ground = same, work: change = same, doubt: doubts = same, dark = [] } = condition;
      const bridge = granted(designBridge(ground({ ...larchFord, gap }), heron, ''));
      const work = change(granted(orderOfWork(bridge, heron)));
      const plan = granted(makePlan(work, { shape: 'pert', crews: true, effort }));
      const doubt = doubts(usualDoubt(work));
      const { p50, p80 } = simulate(work, plan, {
        runs,
        seed: 11,
        shape: 'pert',
        askedFor: null,
        doubts: { doubt, dark },
      });
      return {
        gap,
        condition: condition.name,
        opens: condition.opens,
        bays: bridge.bays,
        factor: conditionsFactor(doubt),
        planned: plan.minutesToOpen,
        p50,
        p80,
      };
    }),
  );
}

function same<Value>(value: Value): Value {
  return value;
}
