import { latestArrivals, openingIfLate } from '#domain/bridge/stores/arrivals.ts';
import { type OnLoad, partsOnLoads } from '#domain/bridge/stores/onLoad.ts';
import { storesOf } from '#domain/bridge/stores/stores.ts';
import { type LoadTimes, loadTimes, type Spread } from '#domain/forecast/loadTimes.ts';
import type { Kit } from '#domain/kit/kit.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { workAsTold } from '#domain/progress/views/asTold.ts';
import { seenNow } from '#domain/progress/views/seenNow.ts';
import type { StoresLoad, StoresOfKit, StoresReply } from '#shared/wireStores.ts';
import { seedOf, whyNoForecast } from './forecastJob.ts';
import { hundredths } from './hundredths.ts';

/** Draws behind the spread of arrivals: enough for one in ten, and over before anybody waits. */
const draws = 400;

/** Minutes late for which the opening is told. */
const lateBy = [15, 30, 60];

/** The stores of a build seen from `now` (ISO 8601 UTC). `kit` is the one its bridge was designed with, if it is here. */
export function storesNow(
  build: string,
  state: BuildState,
  kit: Kit | null,
  now: string,
): StoresReply {
  const drawn = drawnTimes(build, state, now);
  const carries = kit && state.bridge ? partsOnLoads(kit, state.bridge) : new Map();
  return {
    kit: kit && ofKit(kit, state),
    loads: loadsOf(state, carries, new Map(drawn.map((times) => [times.load, times]))),
    draws: drawn.length > 0 ? draws : 0,
  };
}

function ofKit(kit: Kit, { bridge, work }: BuildState): StoresOfKit | null {
  if (!bridge) return null;
  const { kilograms, walk, carrying, stacks, deck, packing } = storesOf(bridge, kit, work);
  const truck = kit.truck && { mass: kit.truck.mass, bed: kit.truck.length * kit.truck.width };
  return {
    kilograms,
    walk,
    carrying: carrying.map((one) => ({ ...one, warnings: [...one.warnings] })),
    stacks: [...stacks],
    deck,
    packing: packing && {
      pallets: packing.pallets.map((one) => ({ ...one, parts: [...one.parts] })),
      trucks: packing.trucks.map((one) => ({
        ...one,
        parts: [...one.parts],
        pallets: [...one.pallets],
      })),
      tooBig: [...packing.tooBig],
    },
    truck: truck ?? null,
  };
}

function drawnTimes(build: string, state: BuildState, now: string): LoadTimes[] {
  const { plan, work, loads } = state;
  if (plan === null || whyNoForecast(state) !== null) return [];
  const here = work.loads.map(({ id }) => id).filter((id) => loads[id]?.status === 'in');
  return loadTimes(seenNow(state, plan, now), { runs: draws, seed: seedOf(build), here });
}

function loadsOf(
  state: BuildState,
  carries: ReadonlyMap<string, readonly OnLoad[]>,
  drawn: ReadonlyMap<string, LoadTimes>,
): StoresLoad[] {
  const { work, plan, loads } = state;
  const arrivals = new Map(
    (plan ? latestArrivals(work, plan) : []).map((arrival) => [arrival.load, arrival]),
  );
  const expected = new Map(workAsTold(state).loads.map(({ id, arrives }) => [id, arrives]));
  return work.loads.map(({ id, name, arrives }): StoresLoad => {
    const by = arrivals.get(id);
    const times = drawn.get(id);
    const at = expected.get(id) ?? arrives;
    const here = loads[id]?.status === 'in';
    const users = new Set(work.tasks.filter((task) => task.loads.includes(id)).map((t) => t.id));
    const planned = plan?.tasks.find(({ task }) => users.has(task))?.task;
    return {
      load: id,
      name,
      carries: (carries.get(id) ?? []).map(({ id: part, part: called, count }) => ({
        id: part,
        part: called,
        count,
      })),
      planned: hundredths(arrives),
      expected: hundredths(at),
      here,
      firstTask: planned ?? work.tasks.find((task) => users.has(task.id))?.id ?? null,
      needed: by?.needed == null ? null : hundredths(by.needed),
      latest: by?.latest == null ? null : hundredths(by.latest),
      wanted: times ? rounded(times.wanted) : null,
      latestDrawn: times?.latest ? rounded(times.latest) : null,
      ifLate:
        plan && !here
          ? lateBy.map((minutes) => ({
              by: minutes,
              opens: hundredths(openingIfLate(work, plan, id, at + minutes)),
              laterOnAverage: times ? hundredths(times.laterBy(at + minutes)) : null,
            }))
          : [],
    };
  });
}

function rounded({ p10, p50, p90 }: Spread): Spread {
  return { p10: hundredths(p10), p50: hundredths(p50), p90: hundredths(p90) };
}
