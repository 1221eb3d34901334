import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CriticalPath, criticalPath } from '#domain/schedule/criticalPath.ts';
import { expectedMinutes } from '#domain/tasks/expected.ts';
import type { Work } from '#domain/tasks/work.ts';
import { randomWork } from '#tests/support/randomWork.ts';
import { smallWork } from '#tests/support/smallWork.ts';

function pathOf(work: Work): CriticalPath {
  const path = criticalPath(work, 'pert');
  if (!path.ok) throw new Error(path.reason.sentence);
  return path.value;
}

function task(path: CriticalPath, id: string) {
  return path.tasks.find((one) => one.task === id)!;
}

describe('The critical path', () => {
  it('takes in waits, also negative ones, and links that count from a start', () => {
    // By hand: B starts 2 before A ends (8), C three after B starts (11), so the end is C's at 16.
    const work = smallWork(
      [
        { id: 'A', minutes: 10 },
        { id: 'B', minutes: 4 },
        { id: 'C', minutes: 5 },
      ],
      {
        links: [
          { from: 'A', to: 'B', counts: 'finish', wait: -2 },
          { from: 'B', to: 'C', counts: 'start', wait: 3 },
        ],
      },
    );
    const path = pathOf(work);
    expect(path.minutes).toBe(16);
    expect(path.path).toEqual(['A', 'B', 'C']);
    expect(task(path, 'B')).toMatchObject({ earlyStart: 8, earlyFinish: 12, lateStart: 8 });
    expect(task(path, 'C')).toMatchObject({ earlyStart: 11, totalFloat: 0, freeFloat: 0 });
  });

  it('never starts anything before 0', () => {
    const work = smallWork(
      [
        { id: 'A', minutes: 5 },
        { id: 'B', minutes: 5 },
      ],
      {
        links: [{ from: 'A', to: 'B', counts: 'finish', wait: -60 }],
      },
    );
    const path = pathOf(work);
    expect(task(path, 'B').earlyStart).toBe(0);
    expect(path.minutes).toBe(5);
  });

  it('counts free float to what comes next and to the end, along start-links too', () => {
    // By hand: B may slip 1 before it moves C, which starts 2 after B starts; C ends at 12, D at 20.
    const work = smallWork(
      [
        { id: 'A', minutes: 9 },
        { id: 'B', minutes: 1 },
        { id: 'C', minutes: 3, after: ['A'] },
        { id: 'D', minutes: 20 },
      ],
      { links: [{ from: 'B', to: 'C', counts: 'start', wait: 8 }] },
    );
    const path = pathOf(work);
    expect(task(path, 'B')).toMatchObject({ freeFloat: 1, totalFloat: 9 });
    expect(task(path, 'C')).toMatchObject({ freeFloat: 8, totalFloat: 8 });
    expect(task(path, 'D')).toMatchObject({ freeFloat: 0, totalFloat: 0 });
  });

  it('prefers, of chains of one length, the one with more variance', () => {
    const work = smallWork([
      { id: 'sure', minutes: 10 },
      { id: 'doubtful', minutes: [4, 10, 16] },
      { id: 'end', minutes: 2, after: ['sure', 'doubtful'] },
    ]);
    expect(pathOf(work).path).toEqual(['doubtful', 'end']);
  });

  it('moves the end by as much as is added to a task beyond its total float, and by nothing within it', () => {
    // The rule of check 12 of the DCMA's schedule metrics (2012), from memory, with the float taken in.
    fc.assert(
      fc.property(
        fc.integer(),
        fc.integer({ min: 1, max: 30 }),
        fc.nat(),
        fc.integer({ min: 1, max: 600 }),
        (seed, tasks, pick, more) => {
          // Finish-links only: with a start-link behind it a task can grow and move nothing.
          const work = randomWork(seed, { tasks });
          const before = pathOf(work);
          const at = pick % tasks;
          const own = work.tasks[at]!;
          const late = expectedMinutes(own.minutes, 'pert') + more;
          const minutes = { quick: late, likely: late, slow: late };
          const slowed = {
            ...work,
            tasks: work.tasks.map((one) => (one === own ? { ...own, minutes } : one)),
          };
          const moved = Math.max(0, more - before.tasks[at]!.totalFloat);
          expect(pathOf(slowed).minutes).toBeCloseTo(before.minutes + moved, 1);
        },
      ),
    );
  });

  it('has a chain that binds all the way, no negative float, and free float within total float', () => {
    fc.assert(
      fc.property(fc.integer(), fc.integer({ min: 1, max: 40 }), (seed, tasks) => {
        const work = randomWork(seed, { tasks, waits: true });
        const path = pathOf(work);
        for (const one of path.tasks) {
          expect(one.freeFloat).toBeGreaterThanOrEqual(0);
          expect(one.totalFloat).toBeGreaterThanOrEqual(one.freeFloat - 1e-9);
        }
        const chain = path.path.map((id) => task(path, id));
        for (const one of chain) expect(one.totalFloat).toBeCloseTo(0, 9);
        for (const [at, to] of chain.entries()) {
          const from = chain[at - 1];
          const binds = work.links.some(
            (link) =>
              link.from === from?.task &&
              link.to === to.task &&
              Math.abs(
                (link.counts === 'start' ? from.earlyStart : from.earlyFinish) +
                  link.wait -
                  to.earlyStart,
              ) < 1e-6,
          );
          expect(from === undefined ? to.earlyStart === 0 : binds).toBe(true);
        }
        expect(chain.at(-1)?.earlyFinish).toBe(path.minutes);
      }),
    );
  });

  it('follows a chain of 20,000 tasks', () => {
    const rows = Array.from({ length: 20_000 }, (_, at) => ({
      id: `t${at}`,
      minutes: 1,
      after: at === 0 ? [] : [`t${at - 1}`],
    }));
    const path = pathOf(smallWork(rows));
    expect(path.minutes).toBe(20_000);
    expect(path.path).toHaveLength(20_000);
  });

  it('is refused with the names of a loop', () => {
    const work = smallWork([
      { id: 'A', minutes: 1, after: ['B'] },
      { id: 'B', minutes: 1, after: ['A'] },
    ]);
    const path = criticalPath(work, 'pert');
    expect(path.ok ? null : path.reason).toMatchObject({ code: 'loop-in-order', of: ['A', 'B'] });
  });
});
