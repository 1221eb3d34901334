import { describe, expect, it } from 'vitest';
import type { PlanningSaid } from '#client/data/planning/messages.ts';
import { searchPieces } from '#client/data/planning/searchPieces.ts';
import type { Work } from '#domain/tasks/work.ts';
import { checkPlan } from '#tests/support/checkPlan.ts';
import { randomWork } from '#tests/support/randomWork.ts';
import { smallWork } from '#tests/support/smallWork.ts';

/** Searches by a clock that moves on a tenth of a second each time somebody looks at it. */
function searched(work: Work, seconds: number): PlanningSaid[] {
  const said: PlanningSaid[] = [];
  let time = 0;
  searchPieces(
    work,
    seconds,
    (one) => said.push(one),
    () => {
      time += 100;
      return time;
    },
  );
  return said;
}

describe('a search on the device', () => {
  it('hands out plans that stand the check, each better or with a higher bound than the one before', () => {
    const work = randomWork(5, { tasks: 60, crews: 3, zones: 2, joint: true });
    const best = searched(work, 6).flatMap((one) => (one.kind === 'best' ? [one] : []));
    expect(best.length).toBeGreaterThan(0);
    for (const [at, { plan, news }] of best.entries()) {
      expect(checkPlan(work, plan, { crews: true })).toEqual([]);
      expect(news.minutesToOpen).toBe(plan.minutesToOpen);
      const before = best[at - 1]?.plan;
      if (before) {
        const better = plan.minutesToOpen < before.minutesToOpen;
        expect(better || plan.lowerBound > before.lowerBound).toBe(true);
        expect(plan.minutesToOpen).toBeLessThanOrEqual(before.minutesToOpen);
      }
    }
  });

  it('ends as soon as nothing can be better', () => {
    const chain = smallWork([
      { id: 'a', minutes: 5 },
      { id: 'b', minutes: 4, after: ['a'] },
    ]);
    const said = searched(chain, 1_000_000);
    expect(said).toMatchObject([{ kind: 'best', news: { minutesToOpen: 9, proven: true } }]);
  });

  it('says why there is no plan', () => {
    const work = smallWork([{ id: 'a', minutes: 5, people: 9 }], {
      crews: [{ id: 'left', people: 4 }],
    });
    expect(searched(work, 1)).toMatchObject([
      { kind: 'refused', sentence: expect.stringContaining('at least 9') },
    ]);
  });
});
