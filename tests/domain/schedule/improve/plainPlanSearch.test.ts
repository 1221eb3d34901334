import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { makePlan } from '#domain/schedule/makePlan.ts';
import { search } from '#domain/schedule/search/search.ts';
import { checkPlan } from '#tests/support/checkPlan.ts';
import { smInstance } from '#tests/support/smInstance.ts';
import { smProblem } from '#tests/support/smProblem.ts';
import { smWork } from '#tests/support/smWork.ts';

// PSPLIB is no part of the project: see DEVELOPERS.md.
const folder = fileURLToPath(new URL('../../../../../shared/psplib/j60', import.meta.url));
const names = ['j6010_3', 'j6013_1', 'j6025_1', 'j6029_1', 'j609_5', 'j6041_5'];
const there = names.every((name) => existsSync(`${folder}/${name}.sm`));
const skipped = there ? '' : ' (skipped: shared/psplib is not beside the checkout)';

describe('A plain network planned as an order of work', () => {
  // Instances: Kolisch and Sprecher, PSPLIB, European Journal of Operational Research 96, 1997.
  it.skipIf(!there)(`opens about as early as the plain search finds${skipped}`, () => {
    let planned = 0;
    let plain = 0;
    for (const name of names) {
      const text = readFileSync(`${folder}/${name}.sm`, 'utf8');
      const work = smWork(text);
      const plan = makePlan(work, { shape: 'pert', crews: true, effort: 2000 });
      if (!plan.ok) throw new Error(plan.reason.sentence);
      expect(checkPlan(work, plan.value, { crews: true })).toEqual([]);
      planned += plan.value.minutesToOpen;
      plain += search(smProblem(smInstance(text)), { seed: 1, schedules: 2000 }).length;
    }
    expect(planned).toBeLessThanOrEqual(1.01 * plain);
  });
});
