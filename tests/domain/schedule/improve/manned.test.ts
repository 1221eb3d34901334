import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Compiled } from '#domain/schedule/compile.ts';
import { mannedProblems } from '#domain/schedule/improve/manned/mannedProblem.ts';
import { MannedSearch } from '#domain/schedule/improve/manned/mannedSearch.ts';
import { type Manned, MannedSides } from '#domain/schedule/improve/manned/mannedSides.ts';
import { Placer } from '#domain/schedule/improve/placer.ts';
import { lowerBound } from '#domain/schedule/lowerBound.ts';
import { priorityKeys } from '#domain/schedule/priorities.ts';
import { sameWay } from '#domain/schedule/schedule.ts';
import { Random } from '#domain/schedule/search/random.ts';
import { compilationOf } from '#tests/support/compilationOf.ts';
import { randomWork } from '#tests/support/randomWork.ts';
import { smallWork } from '#tests/support/smallWork.ts';

const never = Number.MAX_SAFE_INTEGER;

function sidesOf(compiled: Compiled, unit: number): MannedSides {
  return new MannedSides(mannedProblems(compiled, unit), { placements: 0 });
}

/** Every link and every resource of the work looked at again, apart from the decoder. Only for forward schedules. */
function wrongWith(compiled: Compiled, unit: number, sides: MannedSides, made: Manned): string[] {
  const { numbers } = sides.problems[0];
  const units = (time: number) => Math.round(time / unit);
  const place = new Map([...numbers].map((number, task) => [number, task]));
  const start = (number: number) => made.starts[place.get(number)!]!;
  const wayOf = (number: number) => made.ways[place.get(number)!]!;
  const finish = (number: number) => start(number) + units(compiled.seconds[wayOf(number)]!);
  const wrong: string[] = [];
  for (const number of numbers) {
    const w = wayOf(number);
    if (w < compiled.wayHead[number]! || w >= compiled.wayHead[number + 1]!)
      wrong.push(`way ${number}`);
    if (start(number) < units(compiled.release[number]!)) wrong.push(`release ${number}`);
    for (let at = compiled.beforeHead[number]!; at < compiled.beforeHead[number + 1]!; at += 1) {
      const early = compiled.before[at]!;
      const counted = compiled.beforeFromStart[at] === 1 ? start(early) : finish(early);
      if (start(number) < counted + units(compiled.beforeWait[at]!))
        wrong.push(`link ${early} ${number}`);
    }
  }
  for (let moment = 0; moment < made.length; moment += 1) {
    const used = compiled.capacity.map(() => 0);
    for (const number of numbers) {
      if (start(number) > moment || finish(number) <= moment) continue;
      const w = wayOf(number);
      for (let use = compiled.useHead[w]!; use < compiled.useHead[w + 1]!; use += 1)
        used[compiled.useOf[use]!]! += compiled.useAmount[use]!;
    }
    if (used.some((amount, of) => amount > compiled.capacity[of]!)) wrong.push(`moment ${moment}`);
  }
  return wrong;
}

const anyCompiled = fc.integer({ min: 1, max: 1e9 }).map(
  (seed) =>
    compilationOf(
      randomWork(seed, {
        tasks: 4 + (seed % 20),
        crews: 3,
        zones: 2,
        joint: true,
        keepOff: seed % 2 === 0,
        waits: seed % 3 === 0,
        loads: seed % 5 === 0,
        opens: seed % 7 === 0,
        equipment: seed % 11 < 5,
      }),
    ).compiled,
);

describe('Schedules of the plain network with ways', () => {
  it('keep to links, stores and what there is of everything, made or turned round and back', () => {
    fc.assert(
      fc.property(anyCompiled, fc.integer(), (compiled, seed) => {
        const random = new Random(seed);
        const sides = sidesOf(compiled, 60);
        const { tasks, firstWay, endWay } = sides.problems[0];
        const keys = Int32Array.from({ length: tasks }, () => random.below(50));
        const ways = firstWay.map((first, at) => first + random.below(endWay[at]! - first));
        const open = Uint8Array.from({ length: tasks }, () => random.below(3));
        const made = sides.decode(0, keys, ways, open, never)!;
        expect(wrongWith(compiled, 60, sides, made)).toEqual([]);
        const back = sides.turn(made, null, never)!;
        const forth = sides.turn(back, open, never)!;
        expect(wrongWith(compiled, 60, sides, forth)).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });

  // Worked out by hand: three people and two fill a crew of five, two times three do not fit.
  it('are as short as the people of a crew allow', () => {
    const rows = [
      { id: 'A', minutes: 10, people: 3 },
      { id: 'B', minutes: 10, people: 3 },
      { id: 'C', minutes: 10, people: 2 },
      { id: 'D', minutes: 10, people: 2 },
    ];
    const compiled = compilationOf(
      smallWork(rows, { crews: [{ id: 'left', people: 5 }] }),
    ).compiled;
    const sides = sidesOf(compiled, 60);
    const { firstWay } = sides.problems[0];
    expect(sides.decode(0, Int32Array.of(0, 1, 2, 3), firstWay.slice(), null, never)?.length).toBe(
      20,
    );
    expect(sides.decode(0, Int32Array.of(0, 1, 2, 3), firstWay.slice(), null, 19)).toBeNull();
  });
});

describe('The search on the plain network with ways', () => {
  it('tells of orders that can be placed, the same for the same seed, and none opens before the bound', () => {
    fc.assert(
      fc.property(anyCompiled, fc.integer({ min: 1, max: 1e9 }), (compiled, seed) => {
        const run = () => {
          const placer = new Placer(compiled, compiled.toOpen);
          const rules = priorityKeys(compiled);
          const openings: number[] = [];
          const place = (key: Float64Array, way: Int32Array) => {
            placer.now.way.set(way);
            placer.pinned.fill(sameWay);
            openings.push(placer.forward(key));
          };
          const search = new MannedSearch(compiled, 60, rules, new Random(seed), placer);
          const until = (most: number) => () => placer.placements < most * compiled.count;
          search.breed([], 8, until(60), place);
          const { start, way } = placer.now;
          const last = { start: start.slice(), way: way.slice(), opening: openings.at(-1)! };
          search.free(last, until(120), place);
          return openings;
        };
        const openings = run();
        expect(openings.length).toBeGreaterThan(0);
        expect(run()).toEqual(openings);
        for (const opening of openings) {
          expect(opening).toBeGreaterThanOrEqual(lowerBound(compiled));
          expect(opening).toBeLessThan(Number.POSITIVE_INFINITY);
        }
      }),
      { numRuns: 60 },
    );
  });
});
