import { describe, expect, it } from 'vitest';
import { makePlan } from '#domain/schedule/makePlan.ts';
import { orderOfWork } from '#domain/tasks/fromKit/orderOfWork.ts';
import { bridgeOver, granted, heron } from '../kit/heronKit.ts';

describe('the demo build planned with its own crews', () => {
  const work = granted(orderOfWork(bridgeOver(31), heron));
  const plan = granted(makePlan(work, { shape: 'pert', crews: true }));
  const planned = (id: string) => {
    const task = plan.tasks.find((one) => one.task === id);
    if (!task) throw new Error(`${id} is not planned`);
    return task;
  };

  // The demo was drawn up to land at H+2:40, to be seated at H+3:41 and to open at H+4:29, by expected minutes.
  it.each([
    ['move-5', 160],
    ['seated', 221],
    ['open', 269],
  ])('%s is over about %d min after the start', (id, minutes) => {
    expect(Math.abs(planned(id).finish - minutes)).toBeLessThan(12);
  });

  it('goes on unloading while the bridge moves', () => {
    const moves = work.tasks.filter(({ effect }) => effect?.kind === 'move').map(({ id }) => id);
    const unloading = work.loads.map(({ id }) => planned(id.replace('load', 'unload')));
    const during = moves.filter((id) =>
      unloading.some((task) => task.start < planned(id).finish && planned(id).start < task.finish),
    );
    expect(during.length).toBeGreaterThan(0);
  });

  it('has nobody else in the zones of a keep-off task', () => {
    for (const closed of work.tasks.filter(({ keepOff }) => keepOff)) {
      const { start, finish } = planned(closed.id);
      const inside = work.tasks
        .filter(
          ({ id, zones }) => id !== closed.id && zones.some((zone) => closed.zones.includes(zone)),
        )
        .filter(({ id }) => planned(id).start < finish - 1e-6 && start < planned(id).finish - 1e-6);
      expect(inside.map(({ id }) => id)).toEqual([]);
    }
  });

  it('can be planned at other gaps as well', () => {
    for (const gap of [12, 22, 40]) {
      const other = granted(orderOfWork(bridgeOver(gap), heron));
      expect(makePlan(other, { shape: 'pert', crews: true, effort: 20 }).ok).toBe(true);
    }
  });
});
