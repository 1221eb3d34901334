import fc from 'fast-check';
import { Value } from 'typebox/value';
import { describe, expect, it } from 'vitest';
import { byCrew } from '#domain/forecast/after/byCrew.ts';
import { ownKit } from '#domain/forecast/after/ownKit.ts';
import { type PlayedTask, playedTasks } from '#domain/forecast/after/played.ts';
import { kitCountsAs, proposals } from '#domain/forecast/after/proposal.ts';
import { Review, reviewOf } from '#domain/forecast/after/review.ts';
import { crewsCsv, proposalsCsv, reviewJson, tasksCsv } from '#domain/forecast/after/reviewText.ts';
import { templatesOf } from '#domain/forecast/after/templateOf.ts';
import { plainDoubt, usualDoubt } from '#domain/forecast/doubt/usualDoubt.ts';
import { logMoments } from '#domain/forecast/learn/logMoments.ts';
import { readKit } from '#domain/kit/readKit.ts';
import { readCsv } from '#domain/tasks/csv.ts';
import { crewedPlan, crewedWork } from '../crewedWork.ts';
import { heronKit, heronWork } from '../heron.ts';

const work = crewedWork(
  ['left', 'right'],
  [
    { id: 'bay-1', minutes: [6, 6, 6], crew: 'left' },
    { id: 'bay-2', minutes: [6, 6, 6], crew: 'left', after: ['bay-1'] },
    { id: 'deck', minutes: [10, 10, 10], crew: 'right' },
  ],
);
const plan = crewedPlan(work, { stretch: { deck: 1.5 } });
const plain = plainDoubt(usualDoubt(work));
const ticks = [
  { task: 'bay-1', crews: ['left'], start: 0, finish: 8, stops: [] },
  { task: 'bay-2', crews: ['left'], start: 8, finish: 20, stops: [{ from: 10, to: 15 }] },
  { task: 'deck', crews: ['right'], start: 0, finish: 30, stops: [] },
];

describe('planned against actual', () => {
  it('sets the minutes of the plan against those at work, task by task and crew by crew', () => {
    const played = playedTasks(work, plan, ticks, { doubt: plain });
    expect(
      played.map(({ task, planned, actual, usual }) => [task, planned, actual, usual]),
    ).toEqual([
      ['bay-1', 6, 8, 8],
      ['bay-2', 6, 7, 7],
      // With 1.5 times the minutes for its people, 30 are 20 with the usual ones.
      ['deck', 15, 30, 20],
    ]);
    expect(byCrew(played, work.crews)).toEqual([
      { crew: 'left', name: 'left', tasks: 2, planned: 12, actual: 15 },
      { crew: 'right', name: 'right', tasks: 1, planned: 15, actual: 30 },
    ]);
  });

  it('takes dark and conditions out of what it tells the kit, not out of what was', () => {
    const doubt = {
      ...plain,
      light: { ...plain.light, on: true, factor: 2 },
      weather: { ...plain.weather, on: true, factor: 1.25 },
    };
    const dark = [{ from: 0, to: 100 }];
    const [bay] = playedTasks(work, plan, ticks, { doubt, dark });
    expect(bay).toMatchObject({ actual: 8, usual: 3.2 });
  });

  it('leaves out what is not finished', () => {
    const open = ticks.map((tick) => (tick.task === 'deck' ? { ...tick, finish: null } : tick));
    expect(playedTasks(work, plan, open, { doubt: plain })).toHaveLength(2);
    expect(byCrew([], work.crews)).toEqual([]);
  });
});

describe('the template that a task was made from', () => {
  it('is found for every task of a bridge', () => {
    for (const { id, minutes } of heronWork.tasks) {
      const templates = templatesOf(heronKit.order, id);
      expect(templates.length, id).toBeGreaterThan(0);
      expect(
        templates.map((template) => template.minutes),
        id,
      ).toContainEqual(minutes);
    }
  });

  it('is none for what a leader added', () => {
    for (const id of ['tea', 'bay-', 'bay-left', 'unload', '-hold']) {
      expect(templatesOf(heronKit.order, id), id).toEqual([]);
    }
  });
});

const bay = heronKit.order.find(({ id }) => id === 'bay')!;
const usual = Math.exp(logMoments('pert', bay.minutes)!.mean);

function build(minutes: readonly number[], trust = 1): PlayedTask[] {
  return minutes.map((each, k) => ({
    task: `bay-${k + 1}-left`,
    name: `Bay ${k + 1}`,
    crews: ['left'],
    planned: 4,
    actual: each,
    usual: each,
    trust,
  }));
}

/** Minutes about a factor that scatter as the kit says. */
function like(factor: number, count = 8): number[] {
  const width = Math.sqrt(logMoments('pert', bay.minutes)!.variance);
  return Array.from(
    { length: count },
    (_, k) =>
      usual * factor * Math.exp(width * (k % 2 === 0 ? 1 : -1) * Math.sqrt((count - 1) / count)),
  );
}

describe('proposed minutes', () => {
  it('leave the kit alone while builds go as it says', () => {
    expect(proposals(heronKit.order, 'pert', [])).toEqual([]);
    expect(proposals(heronKit.order, 'pert', [build(like(1))])).toEqual([]);
  });

  it('go the further towards what was, the more builds they rest on', () => {
    const likelyAfter = (count: number) => {
      const builds = Array.from({ length: count }, () => build(like(2)));
      const [proposal] = proposals([bay], 'pert', builds);
      expect(proposal).toMatchObject({ task: 'bay', builds: count, tasks: 8 * count });
      return proposal!.minutes.likely;
    };
    // Shrunk on the scale of logarithms: 4 min times 2^(n / (n + 3)), to half minutes.
    for (const n of [1, 3, 9]) {
      const expected = 4 * 2 ** (n / (n + kitCountsAs));
      expect(Math.abs(likelyAfter(n) - expected)).toBeLessThanOrEqual(0.2501);
    }
  });

  it('take a build of many bays for one build', () => {
    const [few] = proposals([bay], 'pert', [build(like(2, 4)), build(like(1, 4))]);
    const [many] = proposals([bay], 'pert', [build(like(2, 40)), build(like(1, 4))]);
    expect(many!.minutes.likely).toBe(few!.minutes.likely);
  });

  it('widen where tasks scatter more than the kit says', () => {
    const wild = build([2, 8, 2, 8, 2, 8, 2, 8, 2, 8, 2, 8].map((each) => each));
    const { minutes } = proposals([bay], 'pert', [wild])[0]!;
    expect(minutes.slow / minutes.quick).toBeGreaterThan(bay.minutes.slow / bay.minutes.quick);
  });

  it('keep quick, likely and slow in their order whatever was told', () => {
    const told = fc.array(fc.double({ min: 0.1, max: 500, noNaN: true }), {
      minLength: 1,
      maxLength: 11,
    });
    fc.assert(
      fc.property(fc.array(told, { minLength: 1, maxLength: 6 }), (builds) => {
        for (const { minutes } of proposals(
          heronKit.order,
          'pert',
          builds.map((each) => build(each)),
        )) {
          expect(minutes.quick).toBeGreaterThan(0);
          expect(minutes.likely).toBeGreaterThanOrEqual(minutes.quick);
          expect(minutes.slow).toBeGreaterThanOrEqual(minutes.likely);
        }
      }),
    );
  });

  it('make an own copy of the kit that reads as a kit and says where it comes from', () => {
    const accepted = proposals(heronKit.order, 'pert', [build(like(2)), build(like(2))]);
    const own = ownKit(heronKit, accepted, 'heron-own');
    const read = readKit(JSON.parse(JSON.stringify(own)));
    expect(read.ok).toBe(true);
    expect(own.order.find(({ id }) => id === 'bay')!.minutes).toEqual(accepted[0]!.minutes);
    expect(own.source).toContain('2 own builds');
    expect(own.title).toBe(`${heronKit.title}, own minutes`);
    expect(ownKit(own, accepted, 'heron-again').title).toBe(own.title);
    const long = ownKit({ ...heronKit, title: 'x'.repeat(80) }, accepted, 'long').title;
    expect([long.length, long.endsWith(', own minutes')]).toEqual([80, true]);
    expect(own.notForUse).toBe(heronKit.notForUse);
    expect(own.launch).toEqual(heronKit.launch);
    expect(heronKit.order.find(({ id }) => id === 'bay')!.minutes).toEqual(bay.minutes);
  });
});

describe('the exported review', () => {
  const named = ticks.map((tick) => tick);
  const played = playedTasks(work, plan, named, { doubt: plain }).map((task) =>
    task.task === 'deck' ? { ...task, name: '=SUM(1), "deck"' } : task,
  );
  const proposed = proposals(heronKit.order, 'pert', [build(like(2))]);
  const review = reviewOf('Larch Ford', played, work.crews, proposed);

  it('is a JSON file that its schema knows', () => {
    const read = JSON.parse(reviewJson(review));
    expect(read).toEqual(review);
    expect(Value.Check(Review, read)).toBe(true);
  });

  it('is tables that read back, with commas, quotes and no formulas', () => {
    const cells = (text: string) => {
      const { rows, faults } = readCsv('review', text);
      expect(faults).toEqual([]);
      return rows.map((row) => row.cells);
    };
    const tasks = cells(tasksCsv(review));
    expect(tasks[0]).toEqual(['task', 'name', 'crews', 'planned', 'actual', 'usual', 'trust']);
    expect(tasks[1]!.slice(3)).toEqual(['6', '8', '8', '1']);
    expect(tasks[3]![1]).toBe('\'=SUM(1), "deck"');
    expect(cells(crewsCsv(review))).toHaveLength(3);
    const [header, row] = cells(proposalsCsv(review));
    expect(header).toHaveLength(10);
    expect(row!.slice(2, 5)).toEqual(['3', '4', '7']);
    expect(tasksCsv(review)).toMatch(/\r\n$/);
  });
});
