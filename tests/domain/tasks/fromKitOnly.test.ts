import { describe, expect, it } from 'vitest';
import { designBridge } from '#domain/bridge/design.ts';
import type { Kit, LaunchRules } from '#domain/kit/kit.ts';
import type { TaskTemplate } from '#domain/kit/order.ts';
import { readKit } from '#domain/kit/readKit.ts';
import { orderOfWork } from '#domain/tasks/fromKit/orderOfWork.ts';
import { granted, ground, heron, larchFord } from '../kit/heronKit.ts';
import { everythingBefore, expectSoundOrder, graphOf, taskOf } from './workChecks.ts';

const weights: TaskTemplate = {
  id: 'weights',
  makes: 'weights-{stage}',
  name: 'Weights on the tail for move {stage}',
  phase: 'Moves',
  repeat: { by: 'stage' },
  only: 'counterweight',
  needs: [{ anyOf: ['left'], people: { least: 4, usual: 6, most: 7 } }],
  minutes: { quick: 4, likely: 7, slow: 14 },
  zones: ['assembly'],
  cautions: ['Nobody behind the tail while it is loaded.'],
  tools: [],
  after: [{ task: 'brace', bays: 'same' }],
  before: [{ task: 'ready', stage: 'same' }],
  place: 'assembly',
};
const rules = heron.launch as LaunchRules;
const kit: Kit = {
  ...heron,
  launch: { ...rules, counterweight: { mass: 200, most: 20 } },
  order: [...heron.order, weights],
};

describe('tasks that are only wanted sometimes', () => {
  it('put weights on the tail for the moves that need them, and for no other', () => {
    expect(readKit(kit).ok).toBe(true);
    const bridge = granted(designBridge(ground({ gap: 31 }), kit, '', { nose: 5 }));
    const work = granted(orderOfWork(bridge, kit));
    expectSoundOrder(work);
    const weighted = bridge.stages.filter(({ counterweight = 0 }) => counterweight > 0);
    expect(weighted.length).toBeGreaterThan(0);
    const made = work.tasks.map(({ id }) => id).filter((id) => id.startsWith('weights'));
    expect(made).toEqual(weighted.map(({ stage }) => `weights-${stage}`));
    for (const { stage } of weighted) {
      expect(everythingBefore(graphOf(work), `move-${stage}`)).toContain(`weights-${stage}`);
    }
    const without = granted(orderOfWork(granted(designBridge(larchFord, kit, '')), kit));
    expect(without.tasks).toHaveLength(154);
  });

  it('have to be about a bank or a stage, which is a fault otherwise', () => {
    const faultsOf = (other: Partial<TaskTemplate>) => {
      const { repeat, ...bare } = weights;
      const read = readKit({
        ...kit,
        order: [
          ...heron.order,
          { ...bare, makes: 'weights', name: 'Weights', after: [], before: [], ...other },
        ],
      });
      return read.ok ? [] : read.reason.map(({ path }) => path);
    };
    const path = `/order/${heron.order.length}/only`;
    expect(faultsOf({})).toContain(path);
    expect(faultsOf({ only: 'soft-bank' })).toContain(path);
    expect(faultsOf({ only: 'soft-bank', bank: 'near' })).toEqual([]);
  });
});

describe('a hold that asks for the margin', () => {
  it('gets the number that the kit keeps, none at all included', () => {
    const asking = (margin: number): Kit => ({
      ...heron,
      launch: { ...rules, margin },
      order: heron.order.map((template) =>
        template.id === 'ready' && template.hold
          ? {
              ...template,
              hold: {
                ...template.hold,
                measures: [
                  ...template.hold.measures,
                  {
                    key: 'balance',
                    name: 'Balance behind the rollers',
                    unit: 'm',
                    least: 'margin',
                  },
                ],
              },
            }
          : template,
      ),
    });
    for (const margin of [0, 1.5, 2]) {
      const work = granted(
        orderOfWork(granted(designBridge(ground({ gap: 31 }), asking(margin), '')), asking(margin)),
      );
      const measures = taskOf(work, 'ready-1').hold?.measures ?? [];
      expect(measures.find(({ key }) => key === 'balance')?.least).toBe(margin);
      expect(measures.map(({ key }) => key)).not.toContain('decked');
    }
  });
});
