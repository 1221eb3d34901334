import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { criticalPath } from '#domain/schedule/criticalPath.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import { workToOpening } from '#domain/schedule/workToOpening.ts';
import { openingMoves } from '#domain/tasks/health/delay.ts';
import { type Finding, findingKinds } from '#domain/tasks/health/finding.ts';
import { healthOf } from '#domain/tasks/health/healthOf.ts';
import type { Link, Work } from '#domain/tasks/work.ts';
import { demoBuild } from '#tests/bench/demoBuild.ts';
import { randomWork } from '#tests/support/randomWork.ts';
import { type Small, smallWork } from '#tests/support/smallWork.ts';

const free = { shape: 'pert', crews: false } as const;
const crewed = { shape: 'pert', crews: true } as const;

/** Orders, three jobs one after the other, the opening: nothing to find. */
function sound(change: Partial<Record<string, Partial<Small>>> = {}, more: Small[] = []): Work {
  const chain: Small[] = ['orders', 'dig', 'lay', 'look', 'open'].map((id, at, all) => ({
    id,
    minutes: 10,
    after: at === 0 ? [] : [all[at - 1]!],
    opens: id === 'open',
    ...change[id],
  }));
  return smallWork([...chain, ...more]);
}

const hold = { measures: [], lapsesOn: [], redo: [] };

function found(findings: readonly Finding[], kind: Finding['kind']): string[] | undefined {
  return findings.find((one) => one.kind === kind)?.tasks;
}

function kinds(work: Work, options: Parameters<typeof healthOf>[1] = free): string[] {
  return healthOf(work, options).map(({ kind }) => kind);
}

describe('Health of an order of work', () => {
  it('finds nothing in a chain from the orders to the opening', () => {
    expect(healthOf(sound(), free)).toEqual([]);
  });

  it('finds nothing in the one task there is', () => {
    expect(healthOf(smallWork([{ id: 'only', minutes: 5 }]), free)).toEqual([]);
  });

  it('names a task that is linked to nothing', () => {
    const findings = healthOf(sound({}, [{ id: 'lamp', minutes: 3 }]), free);
    expect(found(findings, 'stands-alone')).toEqual(['lamp']);
    expect(found(findings, 'nothing-after')).toBeUndefined();
  });

  it('names tasks with nothing before them, but not the start', () => {
    const work = sound({ open: { after: ['look', 'post'] } }, [{ id: 'post', minutes: 3 }]);
    expect(found(healthOf(work, free), 'nothing-before')).toEqual(['post']);
  });

  it('names tasks that the opening does not wait for, but not what comes after it', () => {
    const work = sound({}, [
      { id: 'lamp', minutes: 3, after: ['dig'] },
      { id: 'clear', minutes: 3, after: ['open'] },
    ]);
    expect(found(healthOf(work, free), 'nothing-after')).toEqual(['lamp']);
  });

  it('asks which task opens where there are several ends and none is said to', () => {
    const work = sound({ open: { opens: false } }, [{ id: 'lamp', minutes: 3, after: ['dig'] }]);
    const finding = healthOf(work, free).find(({ kind }) => kind === 'nothing-after');
    expect(finding?.tasks).toEqual(['open', 'lamp']);
    expect(finding?.sentence).toContain('Say which task opens');
  });

  it('names a task whose finish nothing waits for, and by the delay test too where it is critical', () => {
    const links: Link[] = [{ from: 'dig', to: 'lay', counts: 'start', wait: 4 }];
    const { tasks, links: chain } = sound({ lay: { after: [] } });
    const work = { ...sound(), tasks, links: [...chain, ...links] };
    const findings = healthOf(work, free);
    expect(found(findings, 'finish-dangles')).toEqual(['dig']);
    expect(found(findings, 'delay-test')).toEqual(['dig']);
  });

  it('says by how much a task that is critical by its start may run late', () => {
    // Lay may start 4 min after dig starts; dig must be finished before look: 14 against 10.
    const links: Link[] = [
      { from: 'dig', to: 'lay', counts: 'start', wait: 4 },
      { from: 'dig', to: 'look', counts: 'finish', wait: 0 },
    ];
    const base = sound({ lay: { after: [] } });
    const findings = healthOf({ ...base, links: [...base.links, ...links] }, free);
    expect(findings.find(({ kind }) => kind === 'delay-test')).toMatchObject({
      weight: 'look',
      tasks: ['dig'],
      sentence: expect.stringContaining('may run 4 min late'),
    });
    expect(found(findings, 'finish-dangles')).toBeUndefined();
  });

  it('names both ends of a negative wait', () => {
    const base = sound();
    const links = base.links.map((link) => (link.to === 'lay' ? { ...link, wait: -3 } : link));
    expect(found(healthOf({ ...base, links }, free), 'negative-wait')).toEqual(['dig', 'lay']);
  });

  it('counts waits and links from a start against their marks', () => {
    const base = sound();
    const links = base.links.map((link) => (link.to === 'lay' ? { ...link, wait: 3 } : link));
    expect(found(healthOf({ ...base, links }, free), 'many-waits')).toEqual(['lay']);
  });

  it('names tasks longer than an hour and floats of more than four', () => {
    const work = sound({ lay: { minutes: 61 }, dig: { minutes: 60 } });
    expect(found(healthOf(work, free), 'very-long')).toEqual(['lay']);
    const slack = sound({ dig: { minutes: 300 }, look: { after: ['lay', 'post'] } }, [
      { id: 'post', minutes: 3, after: ['orders'] },
    ]);
    expect(found(healthOf(slack, free), 'large-float')).toEqual(['post']);
  });

  it('names every task whose people no crew can supply, not just the first', () => {
    const work: Work = {
      ...sound({ dig: { people: 9 }, lay: { crews: ['left'], people: [7, 8, 9] } }),
      crews: [{ id: 'left', name: 'Left', people: 6, skills: [], attached: false }],
    };
    const findings = healthOf(work, crewed).filter(({ kind }) => kind === 'no-crew-can');
    expect(findings.map(({ tasks, weight }) => [tasks, weight])).toEqual([
      [['dig'], 'stops'],
      [['lay'], 'stops'],
    ]);
    expect(kinds(work, free)).not.toContain('no-crew-can');
  });

  it('names a task that its zone can never hold', () => {
    const work: Work = {
      ...sound({ dig: { people: 6, zones: ['rollers'] } }),
      zones: [{ id: 'rollers', name: 'Rollers', bank: 'near', room: 5 }],
    };
    expect(found(healthOf(work, free), 'zone-too-small')).toEqual(['dig']);
  });

  it('names a task too long for the hours of its crew', () => {
    const work: Work = {
      ...sound({ dig: { crews: ['left'] } }),
      crews: [
        { id: 'left', name: 'Left', people: 6, skills: [], attached: false, from: 5, to: 12 },
        { id: 'right', name: 'Right', people: 6, skills: [], attached: false },
      ],
    };
    expect(found(healthOf(work, crewed), 'hours-too-short')).toEqual(['dig']);
  });

  it('names hold points that guard nothing and hold points that look at nothing', () => {
    const guards = sound({ look: { hold } });
    expect(kinds(guards)).toEqual([]);
    const idle = sound({ open: { after: ['lay'] }, look: { hold } });
    expect(found(healthOf(idle, free), 'hold-guards-nothing')).toEqual(['look']);
    const blind = sound({ look: { hold, after: [] } });
    expect(found(healthOf(blind, free), 'hold-looks-at-nothing')).toEqual(['look']);
  });

  it('lets a hold guard the opening as its last task, and no other end', () => {
    const last = sound({ open: { opens: false, hold } });
    expect(kinds(last)).toEqual([]);
    const lost = sound({ look: { hold, opens: false }, open: { opens: false, after: ['lay'] } });
    expect(found(healthOf(lost, free), 'hold-guards-nothing')).toEqual(['look']);
  });

  it('does not take a link from the start of a hold for a guard', () => {
    const base = sound({ look: { hold }, open: { after: [] } });
    const links: Link[] = [{ from: 'look', to: 'open', counts: 'start', wait: 0 }];
    const findings = healthOf({ ...base, links: [...base.links, ...links] }, free);
    expect(found(findings, 'hold-guards-nothing')).toEqual(['look']);
  });

  it('asks about long work that takes nobody', () => {
    const work: Work = {
      ...sound({ dig: { people: 0 } }),
      crews: [{ id: 'left', name: 'Left', people: 6, skills: [], attached: false }],
    };
    expect(found(healthOf(work, crewed), 'nobody-named')).toEqual(['dig']);
  });

  it('says when the longest chain alone misses the time asked for', () => {
    const finding = healthOf(sound(), { ...free, askedFor: 45 })[0];
    expect(finding).toMatchObject({ kind: 'asked-too-early', weight: 'mend' });
    expect(finding?.sentence).toContain('5 min more');
    expect(healthOf(sound(), { ...free, askedFor: 50 })).toEqual([]);
  });

  it('leaves out what is done, and names what should be', () => {
    const work = sound({ orders: { minutes: 70 } });
    const planned = makePlan(work, free);
    if (!planned.ok) throw new Error(planned.reason.sentence);
    const done = { task: 'orders', status: 'done', start: 0, finish: 70, crews: [] } as const;
    const past = { now: 95, tasks: [done] };
    const findings = healthOf(work, { ...free, past, plan: planned.value });
    expect(found(findings, 'very-long')).toBeUndefined();
    // Orders to 70, dig to 80, lay to 90: two of three are not told.
    expect(found(findings, 'behind')).toEqual(['dig', 'lay']);
  });

  it('says of faulty work only that', () => {
    const work = smallWork([
      { id: 'a', minutes: 1, after: ['b'] },
      { id: 'b', minutes: 1, after: ['a'] },
    ]);
    expect(healthOf(work, free)).toMatchObject([{ kind: 'faulty', weight: 'stops' }]);
  });

  it('finds nothing to mend in the demo build, only that unloading overlaps counting on purpose', () => {
    const { work } = demoBuild(1);
    const findings = healthOf(work, { ...crewed, askedFor: 330 });
    expect(findings.filter(({ weight }) => weight !== 'look')).toEqual([]);
    for (const { kind, tasks } of findings) {
      expect(kind).toBe('delay-test');
      const overlapped = ({ from, counts }: Link) => tasks.includes(from) && counts === 'start';
      expect(work.links.filter(overlapped).length).toBeGreaterThanOrEqual(tasks.length);
    }
  });

  it('looks at five thousand tasks without going over them again and again', () => {
    const work = smallWork(
      Array.from({ length: 5000 }, (_, at) => ({
        id: `t${at}`,
        minutes: 1,
        after: at === 0 ? [] : [`t${at - 1}`],
      })),
    );
    const begun = performance.now();
    // A chain of 5,000 minutes: nothing else is wrong with it.
    expect(healthOf(work, free)).toEqual([]);
    expect(performance.now() - begun).toBeLessThan(5000);
  });
});

const anyWork = fc
  .record({
    seed: fc.integer(),
    tasks: fc.integer({ min: 2, max: 25 }),
    crews: fc.integer({ min: 1, max: 3 }),
    opens: fc.boolean(),
    holds: fc.boolean(),
  })
  .map(({ seed, ...options }) =>
    randomWork(seed, { ...options, zones: 2, waits: true, joint: true, skills: true }),
  );

describe('Health of any order of work', () => {
  it('names tasks that exist, and only findings of the list', () => {
    fc.assert(
      fc.property(anyWork, (work) => {
        const ids = new Set(work.tasks.map(({ id }) => id));
        for (const { kind, tasks, sentence } of healthOf(work, crewed)) {
          expect(findingKinds).toContain(kind);
          expect(tasks.length).toBeGreaterThan(0);
          expect(tasks.filter((task) => !ids.has(task))).toEqual([]);
          expect(sentence).toMatch(/\.$/);
        }
      }),
    );
  });

  it('tells by the delay test what a longer task really does to the opening', () => {
    fc.assert(
      fc.property(anyWork, fc.integer({ min: 1, max: 5000 }), fc.nat(), (work, delay, pick) => {
        // Over links, the opening is the end of what leads to it, once nothing there outlasts it.
        const task = work.tasks[pick % work.tasks.length]!;
        const longer = {
          ...work,
          tasks: work.tasks.map((one) => {
            const { quick, likely, slow } = one.minutes;
            const minutes = { quick: quick + delay, likely: likely + delay, slow: slow + delay };
            return one === task ? { ...one, minutes } : one;
          }),
        };
        const moves = openingMoves(work, 'pert', delay);
        expect((moves.get(task.id) ?? 0) * 60).toBeCloseTo(opensAt(longer) - opensAt(work), 6);
      }),
    );
  });

  it('is met by doing what a finding says', () => {
    fc.assert(
      fc.property(anyWork, (work) => {
        for (const finding of healthOf(work, crewed)) {
          const mended = mend(work, finding);
          if (mended) {
            const left = healthOf(mended, crewed).filter(({ kind }) => kind === finding.kind);
            // Each negative wait is a finding of its own, and one task may stand at several.
            const still =
              finding.kind === 'negative-wait'
                ? left.filter(({ tasks }) => tasks.join() === finding.tasks.join())
                : left.flatMap(({ tasks }) => tasks.filter((task) => finding.tasks.includes(task)));
            expect(still).toEqual([]);
          }
        }
      }),
    );
  });
});

/** Seconds at which the opening is, over links only, as the last finish of what the opening is taken from. */
function opensAt(work: Work): number {
  const toOpen = workToOpening(work);
  const critical = criticalPath(toOpen, 'pert');
  if (!critical.ok) throw new Error(critical.reason.sentence);
  const opens = work.tasks.filter((task) => task.opens);
  const holds = work.tasks.filter((task) => task.hold);
  const group = opens.length > 0 ? opens : holds.length > 0 ? holds : work.tasks;
  const ids = new Set(group.map(({ id }) => id));
  const finishes = critical.value.tasks
    .filter(({ task }) => ids.has(task))
    .map(({ earlyFinish }) => earlyFinish * 60);
  return Math.max(...finishes);
}

/** The order of work after what the finding says was done; null where that takes a person's judgement. */
function mend(work: Work, { kind, tasks }: Finding): Work | null {
  const named = new Set(tasks);
  const link = (from: string, to: string): Link => ({ from, to, counts: 'finish', wait: 0 });
  const last = { ...work.tasks[0]!, id: 'last', number: 900, opens: false, zones: [] };
  switch (kind) {
    case 'stands-alone':
    case 'nothing-before': {
      // Links lead from lower to higher rows, so what has nothing before it can come after the first start.
      const start = work.tasks.find(
        ({ id }) => !work.links.some(({ to }) => to === id) && !named.has(id),
      );
      if (!start || start.opens || kind === 'stands-alone') return null;
      return { ...work, links: [...work.links, ...tasks.map((task) => link(start.id, task))] };
    }
    case 'nothing-after': {
      const opens = work.tasks.find((task) => task.opens);
      if (opens) {
        return { ...work, links: [...work.links, ...tasks.map((task) => link(task, opens.id))] };
      }
      const opening = { ...last, opens: true };
      return {
        ...work,
        tasks: [...work.tasks, opening],
        links: [...work.links, ...tasks.map((task) => link(task, 'last'))],
      };
    }
    case 'finish-dangles':
    case 'hold-guards-nothing':
      return {
        ...work,
        tasks: [...work.tasks, last],
        links: [...work.links, ...tasks.map((task) => link(task, 'last'))],
      };
    case 'negative-wait':
      return {
        ...work,
        links: work.links.map((one) =>
          one.from === tasks[0] && one.to === tasks[1]
            ? { ...one, wait: Math.max(0, one.wait) }
            : one,
        ),
      };
    case 'very-long':
      return {
        ...work,
        tasks: work.tasks.map((task) =>
          named.has(task.id) ? { ...task, minutes: { quick: 9, likely: 9, slow: 9 } } : task,
        ),
      };
    default:
      return null;
  }
}
