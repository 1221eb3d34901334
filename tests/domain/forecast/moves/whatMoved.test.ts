import { describe, expect, it } from 'vitest';
import { plainDoubt, usualDoubt } from '#domain/forecast/doubt/usualDoubt.ts';
import { DrawTables } from '#domain/forecast/drawTables.ts';
import { forecastSeen, openingBy, type Seen } from '#domain/forecast/moves/seen.ts';
import { whatMoved } from '#domain/forecast/moves/whatMoved.ts';
import type { PastTask } from '#domain/schedule/past.ts';
import { type CrewedRow, crewedPlan, crewedWork } from '../crewedWork.ts';

const rows: CrewedRow[] = [
  ...[1, 2, 3, 4, 5, 6].map(
    (n): CrewedRow => ({
      id: `bay-${n}`,
      minutes: [4, 5, 9],
      crew: 'left',
      after: n > 1 ? [`bay-${n - 1}`] : [],
    }),
  ),
  { id: 'deck', minutes: [10, 15, 40], crew: 'right', after: ['bay-6'], more: { loads: ['deck'] } },
  { id: 'open', minutes: [1, 2, 3], after: ['deck'], opens: true },
];
const work = {
  ...crewedWork(['left', 'right'], rows),
  loads: [{ id: 'deck', name: 'Truck 5', arrives: 30 }],
};
const plan = crewedPlan(work, { release: { deck: 30 } });
const doubt = { ...usualDoubt(work), events: [] };
const crews = [{ crew: 'left', people: 6 }];

const before: Seen = { work, plan, past: { now: 0, tasks: [] }, doubts: { doubt } };
const options = { runs: 2000, seed: 9, confidence: 0.9 };

/** The first `count` bays done one after the other, each `minutes` long, seen just then. */
function built(count: number, minutes: number, more: Partial<Seen> = {}): Seen {
  const tasks = Array.from({ length: count }, (_, k): PastTask & { finish: number } => ({
    task: `bay-${k + 1}`,
    status: 'done',
    start: k * minutes,
    finish: (k + 1) * minutes,
    crews,
  }));
  const ticks = tasks.map(({ task, start, finish }) => ({
    task,
    crews: ['left'],
    start,
    finish,
    stops: [],
  }));
  return {
    ...before,
    past: { now: count * minutes, tasks },
    doubts: { doubt, ticks },
    ...more,
  };
}

function opening(seen: Seen): number {
  const pairing = { runs: options.runs, seed: options.seed, tables: new DrawTables() };
  return openingBy(forecastSeen(seen, pairing), options.confidence);
}

describe('what moved the opening', () => {
  it('adds up to the whole move, whatever moved it', () => {
    const late = { ...work, loads: [{ ...work.loads[0]!, arrives: 52 }] };
    const few = { ...late, crews: work.crews.map((crew) => ({ ...crew, people: 5 })) };
    const after = built(3, 9, { work: few });
    const { minutes, causes } = whatMoved(before, after, options);
    expect(minutes).toBeCloseTo(opening(after) - opening(before), 9);
    const sum = causes.reduce((total, cause) => total + cause.minutes, 0);
    // Causes under half a minute are not named; there are six kinds.
    expect(Math.abs(sum - minutes)).toBeLessThan(3);
    expect(new Set(causes.map(({ kind }) => kind))).toContain('stores');
    const sizes = causes.map((cause) => Math.abs(cause.minutes));
    expect(sizes).toEqual(sizes.toSorted((one, other) => other - one));
  });

  it('is silent when nothing happened', () => {
    expect(whatMoved(before, before, options)).toEqual({ minutes: 0, causes: [] });
  });

  it('names the truck and how late it is', () => {
    const late = { ...work, loads: [{ ...work.loads[0]!, arrives: 80 }] };
    const { causes } = whatMoved(before, { ...before, work: late }, options);
    expect(causes).toHaveLength(1);
    expect(causes[0]!.sentence).toMatch(/^\d+ min later: Truck 5 50 min late\.$/);
  });

  it('names the crew that lost people', () => {
    const few = {
      ...work,
      crews: work.crews.map((crew) => (crew.id === 'right' ? { ...crew, people: 4 } : crew)),
    };
    const { causes } = whatMoved(before, { ...before, work: few }, options);
    expect(causes.map(({ kind }) => kind)).toEqual(['strength']);
    expect(causes[0]!.sentence).toMatch(/^\d+ min later: right has 4 in place of 6\.$/);
  });

  it('tells slow work apart from what it teaches', () => {
    const { causes } = whatMoved(before, built(4, 8), options);
    const progress = causes.find(({ kind }) => kind === 'progress')!;
    expect(progress.sentence).toMatch(/^\d+ min later: Task bay-1 took 8 min in place of 6,/);
    const pace = causes.find(({ kind }) => kind === 'pace')!;
    expect(pace.minutes).toBeGreaterThan(0);
    expect(pace.sentence).toMatch(/left takes (6|7|12|13) min for each (5|10) planned/);
  });

  it('gives quick work as the reason of an earlier opening, and slow work as that of a later one', () => {
    const quick = whatMoved(before, built(4, 4), options).causes;
    expect(quick.find(({ kind }) => kind === 'progress')?.sentence).toMatch(
      /^\d+ min earlier: Task bay-1 took 4 min in place of 6,/,
    );
    expect(quick.find(({ kind }) => kind === 'pace')?.sentence).toMatch(
      /earlier: left takes (3|4|7|8) min for each (5|10) planned/,
    );
    // One slow bay among quick ones is no reason for an earlier opening.
    const tasks = built(4, 4).past.tasks.map((task, k) =>
      k === 3 ? { ...task, finish: 16 + 3 } : task,
    );
    const mixed = { ...built(4, 4), past: { now: 19, tasks } };
    const earlier = whatMoved(before, mixed, options).causes.filter(({ minutes }) => minutes < 0);
    for (const { sentence } of earlier) expect(sentence).not.toContain('bay-4');
  });

  it('does not credit one quick task with all the doubt that was settled meanwhile', () => {
    // Expected minutes are (4 + 4 x 5 + 9) / 6 = 5.5: the first bay is 1.5 min quick, the other five are as expected.
    const after = built(6, 5.5);
    const [first, ...rest] = after.past.tasks;
    const tasks = [{ ...first!, start: 1.5 }, ...rest];
    const progress = whatMoved(
      before,
      { ...after, past: { ...after.past, tasks } },
      options,
    ).causes.find(({ kind }) => kind === 'progress')!;
    expect(progress.minutes).toBeLessThan(-3);
    expect(progress.sentence).toMatch(
      /^\d+ min earlier: what is done is no longer in doubt; also Task bay-1 took 4 min in place of 6\.$/,
    );
  });

  it('names a truck that is no longer in doubt', () => {
    const late = { ...usualDoubt(work), day: { ...doubt.day, on: false } };
    const events = late.events.filter(({ kind }) => kind === 'late-load');
    const sure = { ...late, events: events.map((event) => ({ ...event, chance: 0.9 })) };
    const start = { ...before, doubts: { doubt: sure } };
    const told = { ...before, doubts: { doubt: sure, toldLoads: ['deck'] } };
    const { causes } = whatMoved(start, told, options);
    expect(causes.map(({ kind }) => kind)).toEqual(['doubt']);
    expect(causes[0]!.sentence).toMatch(/^\d+ min earlier: Truck 5 no longer in doubt\.$/);
  });

  it('says so when work stands still, and when another plan came', () => {
    const still: Seen = {
      ...before,
      past: { now: 25, tasks: [{ task: 'bay-1', status: 'stopped', start: 0, crews }] },
    };
    expect(whatMoved(before, still, options).causes[0]!.sentence).toMatch(
      /^\d+ min later: Task bay-1 stands still\.$/,
    );
    const slow = crewedPlan(work, { release: { deck: 30 }, stretch: { deck: 1.5 } });
    const { causes } = whatMoved(before, { ...before, plan: slow }, options);
    expect(causes.map(({ kind }) => kind)).toEqual(['plan']);
    expect(causes[0]!.sentence).toContain('a new plan was accepted');
  });

  it('says so when conditions changed', () => {
    const rain = { ...doubt, weather: { ...doubt.weather, on: true } };
    const { causes } = whatMoved(before, { ...before, doubts: { doubt: rain } }, options);
    expect(causes.map(({ kind }) => kind)).toEqual(['doubt']);
    expect(causes[0]!.minutes).toBeGreaterThan(5);
  });

  it('moves nothing by learning when day and crews are off', () => {
    const plain = plainDoubt(doubt);
    const start = { ...before, doubts: { doubt: plain } };
    const after = built(4, 8);
    const { causes } = whatMoved(
      start,
      { ...after, doubts: { ...after.doubts, doubt: plain } },
      options,
    );
    expect(causes.map(({ kind }) => kind)).toEqual(['progress']);
  });
});
