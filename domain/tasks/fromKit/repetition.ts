import type { Bridge, Stage } from '../../bridge/bridge.ts';
import type { Repeat, TaskTemplate } from '../../kit/order.ts';
import type { Bank, Side } from '../effect.ts';
import type { CarriedLoad } from './loads.ts';
import { lotsOf, numbers } from './lots.ts';

/** One repetition of a template task: what it is about. See `domain/kit/order.ts` for the meaning of each. */
export type Repetition = {
  readonly bays: readonly number[] | null;
  readonly sections: readonly number[] | null;
  readonly stage: number | null;
  readonly side: Side | null;
  readonly bank: Bank | null;
  readonly lot: number | null;
  readonly load: CarriedLoad | null;
};

/** What a template repeats along; a reference between two that share one means the same by default. */
export type Axis = 'bays' | 'sections' | 'stage' | 'side' | 'bank' | 'load';

const nothing: Repetition = {
  bays: null,
  sections: null,
  stage: null,
  side: null,
  bank: null,
  lot: null,
  load: null,
};

const sides = ['left', 'right'] as const;
const banks = ['near', 'far'] as const;

/** All repetitions of a template for that bridge, in the order of work. */
export function repetitionsOf(
  template: TaskTemplate,
  bridge: Bridge,
  loads: readonly CarriedLoad[],
): Repetition[] {
  return everyOf(template, bridge, loads).filter((one) => isWanted(template.only, one, bridge));
}

/** Whether a template that is only wanted sometimes is wanted here. */
function isWanted(
  only: TaskTemplate['only'],
  { bank, stage }: Repetition,
  bridge: Bridge,
): boolean {
  switch (only) {
    case 'soft-bank':
      return bank !== null && (bridge.softBanks ?? []).includes(bank);
    case 'counterweight':
      return (bridge.stages.find((one) => one.stage === stage)?.counterweight ?? 0) > 0;
    case undefined:
      return true;
  }
}

function everyOf(
  template: TaskTemplate,
  bridge: Bridge,
  loads: readonly CarriedLoad[],
): Repetition[] {
  const { repeat } = template;
  if (!repeat) {
    return [{ ...nothing, bank: template.bank ?? null }];
  }
  const along = alongOf(repeat, bridge, loads).map((repetition) =>
    template.bank && repetition.bank === null ? { ...repetition, bank: template.bank } : repetition,
  );
  return repeat.sides
    ? along.flatMap((repetition) => sides.map((side) => ({ ...repetition, side })))
    : along;
}

/** What a template repeats along. */
export function axesOf({ repeat }: TaskTemplate): Axis[] {
  if (!repeat) {
    return [];
  }
  const axis: Axis =
    repeat.by === 'bay' || repeat.by === 'lot'
      ? 'bays'
      : repeat.by === 'section'
        ? 'sections'
        : repeat.by;
  return repeat.sides ? [axis, 'side'] : [axis];
}

function alongOf(repeat: Repeat, bridge: Bridge, loads: readonly CarriedLoad[]): Repetition[] {
  switch (repeat.by) {
    case 'bay':
      return baysOf(repeat, bridge);
    case 'lot':
      return lotsOf(numbers(bridge.bays), repeat.size ?? 1, repeat.rearFirst ?? false).map(
        (bays, at) => ({ ...nothing, bays, lot: at + 1 }),
      );
    case 'section':
      return numbers(bridge.nose).map((section) => ({
        ...nothing,
        sections: [section],
        stage: numberOf(bridge.stages.find(({ noseOff }) => noseOff?.includes(section))),
      }));
    case 'stage':
      return stagesOf(repeat, bridge);
    case 'load':
      return loads.map((load) => ({ ...nothing, load, bays: load.bays }));
    case 'bank':
      return banks.map((bank) => ({ ...nothing, bank }));
    case 'side':
      return sides.map((side) => ({ ...nothing, side }));
  }
}

function baysOf(repeat: Repeat, bridge: Bridge): Repetition[] {
  const needing = (wants: (stage: Stage) => boolean) => numberOf(bridge.stages.find(wants));
  const bays = numbers(bridge.bays).map((bay): Repetition & { readonly early: number | null } => {
    const early = needing(({ decked }) => decked.includes(bay));
    const built = needing((stage) => stage.bays >= bay);
    const stage = repeat.bays === undefined ? built : early;
    return { ...nothing, bays: [bay], stage, early };
  });
  const wanted = bays
    .filter(
      ({ early }) =>
        repeat.bays === undefined || (repeat.bays === 'decked-early') === (early !== null),
    )
    .map(({ early, ...repetition }) => repetition);
  return repeat.rearFirst ? wanted.reverse() : wanted;
}

function stagesOf(repeat: Repeat, bridge: Bridge): Repetition[] {
  const landing = bridge.stages.findIndex(({ lands }) => lands);
  return bridge.stages
    .map((stage, at) => {
      const before = bridge.stages[at - 1]?.bays ?? 0;
      return {
        ...nothing,
        stage: stage.stage,
        bays: numbers(stage.bays).slice(before),
        sections: stage.noseOff ?? [],
      };
    })
    .filter((_, at) => {
      switch (repeat.stages) {
        case 'before-landing':
          return at < landing;
        case 'landing':
          return at === landing;
        case 'after-landing':
          return at > landing;
        default:
          return true;
      }
    });
}

function numberOf(stage: Stage | undefined): number | null {
  return stage?.stage ?? null;
}
