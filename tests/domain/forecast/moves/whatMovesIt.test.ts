import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Doubt } from '#domain/forecast/doubt/doubt.ts';
import { plainDoubt, usualDoubt } from '#domain/forecast/doubt/usualDoubt.ts';
import { withMorePeople } from '#domain/forecast/moves/morePeople.ts';
import type { Seen } from '#domain/forecast/moves/seen.ts';
import { movedSentence, whatMovesIt } from '#domain/forecast/moves/whatMovesIt.ts';
import { type CrewedRow, crewedPlan, crewedWork } from '../crewedWork.ts';

// Left builds while a truck is awaited; a hold, a move by vehicle, and a deck by the right crew. Bracing works aside.
const rows: CrewedRow[] = [
  { id: 'bay', minutes: [20, 30, 50], crew: 'left' },
  { id: 'brace', minutes: [4, 5, 6], crew: 'bracing' },
  {
    id: 'hold',
    minutes: [2, 6, 12],
    after: ['bay', 'brace'],
    more: { hold: { measures: [], lapsesOn: [], redo: [] } },
  },
  {
    id: 'move',
    minutes: [4, 6, 9],
    after: ['hold'],
    more: { effect: { kind: 'move', stage: 1, metres: 6, lands: true } },
  },
  { id: 'deck', minutes: [10, 15, 40], crew: 'right', after: ['move'], more: { loads: ['deck'] } },
  { id: 'open', minutes: [1, 1, 1], after: ['deck'], opens: true },
];
const work = {
  ...crewedWork(['left', 'right', 'bracing'], rows),
  loads: [{ id: 'deck', name: 'Truck 5', arrives: 45 }],
};
const release = { deck: 45 };
const plan = crewedPlan(work, { release });
const off = plainDoubt(usualDoubt(work));
const night: Doubt = { ...off, light: { ...off.light, on: true } };

function seenWith(more: Partial<Seen> = {}): Seen {
  return {
    work,
    plan,
    past: { now: 0, tasks: [] },
    doubts: { doubt: night, dark: [{ from: 55, to: 700 }] },
    ...more,
  };
}

const options = { runs: 1500, seed: 5 };
const found = whatMovesIt(seenWith(), options);
const lever = (kind: string, of?: string) =>
  [...found.ranked, ...found.cannotHelp, ...found.cannotHurt].find(
    (each) => each.kind === kind && each.of === of,
  );

describe('what moves the opening', () => {
  it('tries people, trucks, lights, holds, slow cases and the vehicle', () => {
    const kinds = [...found.ranked, ...found.cannotHelp].map(({ kind }) => kind);
    expect(new Set(kinds)).toEqual(
      new Set([
        'people',
        'truck-earlier',
        'lights',
        'hold-prepared',
        'slow-case',
        'vehicle-wait',
        'vehicle-winch',
      ]),
    );
  });

  it('ranks by what counts at four in five', () => {
    const sizes = found.ranked.map(({ gain80 }) => Math.abs(gain80));
    expect(sizes).toEqual(sizes.toSorted((one, other) => other - one));
  });

  it('gains with what helps, loses with mishaps', () => {
    expect(lever('people', 'right')!.gain80).toBeGreaterThan(1);
    expect(lever('truck-earlier', 'deck')!.gain50).toBeGreaterThan(0.5);
    expect(lever('lights')!.gain80).toBeGreaterThan(1);
    expect(lever('slow-case', 'deck')!.gain50).toBeLessThan(-5);
    expect(lever('vehicle-wait')!.gain80).toBeLessThan(-1);
    expect(lever('hold-prepared', 'hold')!.gain80).toBeGreaterThan(1);
    expect(lever('vehicle-winch')!.gain80).toBeLessThan(0);
  });

  it('says what cannot help', () => {
    expect(found.cannotHelp).toContainEqual({
      kind: 'people',
      of: 'bracing',
      words: 'Two more people in bracing',
      gain50: 0,
      gain80: 0,
    });
    expect(found.ranked.some(({ of }) => of === 'bracing')).toBe(false);
    expect(movedSentence(lever('people', 'bracing')!)).toBe(
      'Two more people in bracing: no change.',
    );
  });

  it('comes to whole figures without doubt', () => {
    const sure = seenWith({ doubts: { doubt: { ...off, own: false } } });
    const { ranked } = whatMovesIt(sure, options);
    // Truck at 45; deck (10 + 60 + 40) / 6, open 1. Before it bay 190 / 6, hold 38 / 6, move 37 / 6: done at 44.17. So the
    // truck gains what it holds: 0.83 of its 30 minutes.
    const truck = ranked.find(({ kind }) => kind === 'truck-earlier')!;
    expect(truck.gain50).toBeCloseTo(45 - (190 + 38 + 37) / 6, 9);
    // Eight in place of six people: deck takes 6/8.
    const people = ranked.find(({ of }) => of === 'right')!;
    expect(people.gain80).toBeCloseTo((110 / 6) * 0.25, 9);
    const slow = ranked.find(({ kind, of }) => kind === 'slow-case' && of === 'deck')!;
    expect(slow.gain50).toBeCloseTo(110 / 6 - 40, 9);
    expect(movedSentence(slow)).toBe(
      'Task deck takes its slow 40 min: 22 min later at even chance, 22 min later at four in five.',
    );
  });

  it('says which mishap would cost nothing', () => {
    const ready = seenWith({
      plan: crewedPlan(work, { release: { deck: 200 } }),
      work: { ...work, loads: [{ ...work.loads[0]!, arrives: 200 }] },
    });
    const { cannotHurt } = whatMovesIt(ready, options);
    expect(cannotHurt.map(({ kind }) => kind)).toContain('vehicle-wait');
  });

  it('leaves out what is past or cannot be', () => {
    const late = seenWith({
      past: {
        now: 75,
        tasks: ['bay', 'brace', 'hold', 'move'].map((task, k) => ({
          task,
          status: 'done',
          start: 10 * k,
          finish: 10 * k + 10,
          crews: [],
        })),
      },
      doubts: { doubt: off },
    });
    const kinds = whatMovesIt(late, options);
    const all = [...kinds.ranked, ...kinds.cannotHelp].map(({ kind }) => kind);
    expect(new Set(all)).toEqual(new Set(['people', 'slow-case']));
  });

  it('says how far it is and stops when told to', () => {
    const heard: string[] = [];
    const { ranked, cannotHelp } = whatMovesIt(seenWith(), {
      ...options,
      runs: 50,
      onProgress: (done, of) => heard.push(`${done}/${of}`),
      shouldStop: () => heard.length === 3,
    });
    expect(heard[0]).toMatch(/^1\/\d+$/);
    expect(heard).toHaveLength(3);
    expect(ranked.length + cannotHelp.length).toBeLessThanOrEqual(3);
  });
});

describe('more people in a crew', () => {
  it('never stretch a task, and help no further than the most it can use', () => {
    fc.assert(
      fc.property(
        fc.nat({ max: 10 }),
        fc.constantFrom('left', 'right', 'bracing'),
        (count, crew) => {
          const { plan: after } = withMorePeople(seenWith(), crew, count);
          after.tasks.forEach(({ stretch }, k) => {
            expect(stretch).toBeLessThanOrEqual(plan.tasks[k]!.stretch);
            // Six people usual, eight at most.
            expect(stretch).toBeGreaterThanOrEqual(0.75);
          });
        },
      ),
    );
  });

  it('fill up first what the crew has lost', () => {
    const short = {
      ...work,
      crews: work.crews.map((crew) => (crew.id === 'left' ? { ...crew, people: 4 } : crew)),
    };
    const after = withMorePeople(seenWith({ work: short }), 'left', 2);
    expect(after.work.crews[0]!.people).toBe(6);
    expect(after.plan.tasks[0]!.stretch).toBe(1);
  });

  it('are at one task at a time', () => {
    const together = crewedWork(
      ['left'],
      [
        { id: 'a', minutes: [10, 10, 10], crew: 'left' },
        { id: 'b', minutes: [10, 10, 10], crew: 'left' },
        { id: 'c', minutes: [10, 10, 10], crew: 'left' },
      ],
    );
    const times = { a: [0, 10], b: [0, 10], c: [10, 20] };
    const bare = crewedPlan(together);
    const timed = {
      ...bare,
      tasks: bare.tasks.map((task) => {
        const [start, finish] = times[task.task as keyof typeof times];
        return { ...task, start: start!, finish: finish! };
      }),
    };
    const after = withMorePeople(seenWith({ work: together, plan: timed }), 'left', 2);
    expect(after.plan.tasks.map(({ stretch }) => stretch)).toEqual([0.75, 1, 0.75]);
  });

  it('have to find room in the zone', () => {
    const narrow = {
      ...work,
      zones: [{ id: 'z', name: 'Assembly', bank: 'near' as const, room: 7 }],
      tasks: work.tasks.map((task) => ({ ...task, zones: ['z'] })),
    };
    const after = withMorePeople(seenWith({ work: narrow }), 'right', 2);
    expect(after.plan.tasks.find(({ task }) => task === 'deck')!.stretch).toBeCloseTo(6 / 7, 12);
  });
});
