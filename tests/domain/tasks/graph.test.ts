import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { everythingAfter, findLoop, taskGraph, topologicalOrder } from '#domain/tasks/graph.ts';
import { randomWork } from '#tests/support/randomWork.ts';
import { type Small, smallWork } from '#tests/support/smallWork.ts';

function chain(length: number): Small[] {
  return Array.from({ length }, (_, at) => ({
    id: `t${at}`,
    minutes: 1,
    after: at === 0 ? [] : [`t${at - 1}`],
  }));
}

describe('The order of work as a graph', () => {
  it('has a node for each task and an edge for each link, two where finish and start are both linked', () => {
    const work = smallWork(
      [
        { id: 'A', minutes: 1 },
        { id: 'B', minutes: 1, after: ['A'] },
      ],
      {
        links: [{ from: 'A', to: 'B', counts: 'start', wait: 3 }],
      },
    );
    const graph = taskGraph(work);
    expect(graph.nodeCount()).toBe(2);
    expect(graph.edge({ v: 'A', w: 'B', name: 'start' })?.wait).toBe(3);
    expect(graph.edge({ v: 'A', w: 'B', name: 'finish' })?.wait).toBe(0);
  });

  it('orders tasks behind what they come after, and has no loop, where links lead one way', () => {
    fc.assert(
      fc.property(fc.integer(), fc.integer({ min: 1, max: 60 }), (seed, tasks) => {
        const work = randomWork(seed, { tasks, waits: true });
        expect(findLoop(work)).toBeNull();
        const order = topologicalOrder(work) ?? [];
        expect(new Set(order).size).toBe(tasks);
        for (const { from, to } of work.links) {
          expect(order.indexOf(from)).toBeLessThan(order.indexOf(to));
        }
      }),
    );
  });

  it('names a loop task by task wherever a link leads back', () => {
    fc.assert(
      fc.property(fc.integer(), fc.integer({ min: 2, max: 40 }), fc.nat(), (seed, tasks, pick) => {
        const work = randomWork(seed, { tasks });
        const link = work.links[pick % Math.max(1, work.links.length)];
        fc.pre(link !== undefined);
        const reached = [...everythingAfter(work, link!.from)];
        const back = { ...link!, from: reached[pick % reached.length]!, to: link!.from };
        const looped = { ...work, links: [...work.links, back] };
        const loop = findLoop(looped) ?? [];
        expect(loop.length).toBeGreaterThan(1);
        for (const [at, from] of loop.entries()) {
          const to = loop[(at + 1) % loop.length];
          expect(looped.links.some((one) => one.from === from && one.to === to)).toBe(true);
        }
        expect(new Set(loop).size).toBe(loop.length);
        expect(topologicalOrder(looped)).toBeNull();
      }),
    );
  });

  it('follows chains of 20,000 tasks', () => {
    const work = smallWork(chain(20_000));
    expect(findLoop(work)).toBeNull();
    expect(topologicalOrder(work)?.at(-1)).toBe('t19999');
    expect(everythingAfter(work, 't0').size).toBe(19_999);
    const closed = {
      ...work,
      links: [...work.links, { ...work.links[0]!, from: 't19999', to: 't0' }],
    };
    expect(findLoop(closed)).toHaveLength(20_000);
  });

  it('tells everything that comes after a task, through others too', () => {
    const rows = [...chain(4), { id: 'x', minutes: 1, after: ['t1'] }, { id: 'y', minutes: 1 }];
    expect(everythingAfter(smallWork(rows), 't1')).toEqual(new Set(['t2', 't3', 'x']));
  });
});
