import { describe, expect, it } from 'vitest';
import { latestArrivals } from '#domain/bridge/stores/arrivals.ts';
import { plainDoubt, usualDoubt } from '#domain/forecast/doubt/usualDoubt.ts';
import { loadTimes } from '#domain/forecast/loadTimes.ts';
import type { Seen } from '#domain/forecast/moves/seen.ts';
import { simulate } from '#domain/forecast/simulate.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import type { Work } from '#domain/tasks/work.ts';
import { granted } from '../kit/heronKit.ts';
import { type CrewedRow, crewedPlan, crewedWork } from './crewedWork.ts';

// Two trucks: panels are used at once and again later, deck only at the end. A third brings what opens nothing.
const rows: CrewedRow[] = [
  { id: 'pegs', minutes: [4, 6, 11], crew: 'left' },
  { id: 'bay-1', minutes: [8, 10, 20], crew: 'left', after: ['pegs'], more: { loads: ['panels'] } },
  {
    id: 'bay-2',
    minutes: [8, 10, 20],
    crew: 'left',
    after: ['bay-1'],
    more: { loads: ['panels'] },
  },
  { id: 'path', minutes: [30, 40, 60], crew: 'right' },
  {
    id: 'deck',
    minutes: [9, 12, 25],
    crew: 'right',
    after: ['bay-2', 'path'],
    more: { loads: ['deck'] },
  },
  { id: 'open', minutes: [1, 1, 1], after: ['deck'], opens: true },
  { id: 'tidy', minutes: [5, 6, 7], crew: 'left', after: ['bay-2'], more: { loads: ['bins'] } },
];

function workWith(arrives: Partial<Record<'panels' | 'deck' | 'bins', number>>): Work {
  return {
    ...crewedWork(['left', 'right'], rows),
    loads: (['panels', 'deck', 'bins'] as const).map((id) => ({
      id,
      name: id,
      arrives: arrives[id] ?? 0,
    })),
  };
}

function seenWith(arrives: Parameters<typeof workWith>[0] = {}): Seen {
  const work = workWith(arrives);
  return {
    work,
    plan: crewedPlan(workWith({})),
    past: { now: 0, tasks: [] },
    doubts: { doubt: plainDoubt(usualDoubt(work)) },
  };
}

const asked = { runs: 800, seed: 11, here: [] };
const found = new Map(loadTimes(seenWith(), asked).map((times) => [times.load, times]));

/** Mean opening over the same draws, when a load comes then. */
function meanOpening(arrives: Parameters<typeof workWith>[0]): number {
  const { work, plan, past, doubts } = seenWith(arrives);
  return simulate(work, plan, { ...asked, shape: plan.shape, askedFor: null, past, doubts }).mean;
}

describe('when a load is wanted', () => {
  it('is when its first task could start but for it', () => {
    const { wanted } = found.get('panels')!;
    // The pegs take 4 to 11 minutes.
    expect(wanted.p10).toBeGreaterThan(4);
    expect(wanted.p90).toBeLessThan(11);
    expect(wanted.p10).toBeLessThan(wanted.p50);
    expect(wanted.p50).toBeLessThan(wanted.p90);
  });

  it('does not hang on when the load itself is expected', () => {
    const late = loadTimes(seenWith({ panels: 500 }), asked).find(({ load }) => load === 'panels');
    expect(late?.wanted).toEqual(found.get('panels')?.wanted);
  });

  it('waits for the other loads of its task’s chain', () => {
    const times = loadTimes(seenWith({ panels: 100 }), asked).find(({ load }) => load === 'deck');
    expect(times?.wanted.p10).toBeGreaterThan(100);
  });
});

describe('how late a load may be', () => {
  it.each(['panels', 'deck'] as const)('is what delays no draw at all before it: %s', (load) => {
    const { latest, laterBy } = found.get(load)!;
    expect(latest).not.toBeNull();
    expect(laterBy(0)).toBe(0);
    for (const arrives of [latest!.p10, latest!.p50, latest!.p90, latest!.p90 + 40]) {
      const later = meanOpening({ [load]: arrives }) - meanOpening({});
      expect(laterBy(arrives)).toBeCloseTo(later, 6);
    }
  });

  it('is never before it is wanted', () => {
    for (const { wanted, latest } of found.values()) {
      if (latest) expect(latest.p50).toBeGreaterThanOrEqual(wanted.p50 - 1e-9);
    }
  });

  it('is nothing for a load that leads to no opening', () => {
    expect(found.get('bins')).toMatchObject({ latest: null });
    expect(found.get('bins')?.laterBy(10_000)).toBe(0);
  });

  it('is what the plan says where nothing is in doubt', () => {
    const sure = (work: Work): Work => ({
      ...work,
      tasks: work.tasks.map((task) => {
        const { likely } = task.minutes;
        return { ...task, minutes: { quick: likely, likely, slow: likely } };
      }),
    });
    const work = sure(workWith({}));
    const plan = granted(makePlan(work, { shape: 'pert', crews: true, effort: 1 }));
    const byPlan = new Map(latestArrivals(work, plan).map((one) => [one.load, one]));
    for (const { load, wanted, latest } of loadTimes(
      { work, plan, past: { now: 0, tasks: [] }, doubts: { doubt: plainDoubt(usualDoubt(work)) } },
      { ...asked, runs: 5 },
    )) {
      expect(wanted.p50).toBeCloseTo(byPlan.get(load)?.needed ?? -1, 6);
      if (latest) expect(latest.p50).toBeCloseTo(byPlan.get(load)?.latest ?? -1, 6);
    }
  });
});

describe('a load that is here, or in use', () => {
  it('is left out', () => {
    const here = loadTimes(seenWith(), { ...asked, here: ['deck'] });
    expect(here.map(({ load }) => load)).toEqual(['panels', 'bins']);
    const begun = loadTimes(
      {
        ...seenWith(),
        past: { now: 10, tasks: [{ task: 'bay-1', status: 'at-work', start: 8, crews: [] }] },
      },
      asked,
    );
    expect(begun.map(({ load }) => load)).toEqual(['deck', 'bins']);
  });
});
