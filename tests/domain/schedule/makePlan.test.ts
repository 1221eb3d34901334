import { describe, expect, it } from 'vitest';
import { makePlan, type PlanOptions } from '#domain/schedule/makePlan.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import { readTables } from '#domain/tasks/tables.ts';
import type { Work } from '#domain/tasks/work.ts';
import { checkPlan } from '#tests/support/checkPlan.ts';
import { smallWork } from '#tests/support/smallWork.ts';

const common = { shape: 'pert', crews: true } as const;

/** The plan, which the independent checker has nothing against. */
function planOf(work: Work, options: Partial<PlanOptions> = {}): Plan {
  const plan = makePlan(work, { ...common, ...options });
  if (!plan.ok) throw new Error(plan.reason.sentence);
  const { crews = true, past } = options;
  expect(checkPlan(work, plan.value, { crews, past })).toEqual([]);
  return plan.value;
}

function refusalOf(work: Work, options: Partial<PlanOptions> = {}) {
  const plan = makePlan(work, { ...common, ...options });
  return plan.ok ? null : { code: plan.reason.code, of: plan.reason.of };
}

function task(plan: Plan, id: string) {
  return plan.tasks.find((one) => one.task === id)!;
}

const left7 = { crews: [{ id: 'left', people: 7 }] };

describe('People of crews', () => {
  it('do two half-crew jobs side by side', () => {
    const rows = ['A', 'B'].map((id) => ({ id, minutes: 10, people: 3 }));
    expect(planOf(smallWork(rows, left7)).minutesToOpen).toBe(10);
    const more = ['A', 'B'].map((id) => ({ id, minutes: 10, people: 4 }));
    expect(planOf(smallWork(more, left7)).minutesToOpen).toBe(20);
  });

  it('are as many as the crew has down to the least, and then the work stretches; more than usual make it go faster', () => {
    const work = smallWork([{ id: 'A', minutes: 10, people: [4, 8, 10] }], {
      crews: [{ id: 'left', people: 5 }],
    });
    const plan = planOf(work);
    expect(task(plan, 'A')).toMatchObject({ crews: [{ crew: 'left', people: 5 }], stretch: 1.6 });
    expect(plan.minutesToOpen).toBe(16);
    const many = smallWork([{ id: 'A', minutes: 10, people: [4, 8, 10] }], {
      crews: [{ id: 'left', people: 12 }],
    });
    expect(task(planOf(many), 'A')).toMatchObject({
      crews: [{ crew: 'left', people: 10 }],
      stretch: 0.8,
      finish: 8,
    });
  });

  it('come from any one of the crews named, whichever lets the work finish first', () => {
    const rows = ['A', 'B', 'C'].map((id) => ({
      id,
      minutes: 10,
      people: 4,
      crews: ['left', 'right'],
    }));
    const work = smallWork(rows, {
      crews: [
        { id: 'left', people: 4 },
        { id: 'right', people: 4 },
        { id: 'other', people: 9 },
      ],
    });
    expect(planOf(work).minutesToOpen).toBe(20);
    const free = smallWork(
      rows.map((row) => ({ ...row, crews: [] })),
      {
        crews: [
          { id: 'left', people: 4 },
          { id: 'right', people: 4 },
          { id: 'other', people: 9 },
        ],
      },
    );
    expect(planOf(free).minutesToOpen).toBe(10);
  });

  it('do joint tasks together, each crew for the whole task', () => {
    const work = smallWork(
      [
        { id: 'joint', minutes: 10, crews: ['left', 'right'], joint: true, people: 4 },
        { id: 'own', minutes: 5, crews: ['right'], people: 2 },
      ],
      {
        crews: [
          { id: 'left', people: 4 },
          { id: 'right', people: 5 },
        ],
      },
    );
    const plan = planOf(work);
    expect(task(plan, 'joint').crews).toEqual([
      { crew: 'left', people: 4 },
      { crew: 'right', people: 4 },
    ]);
    expect(plan.minutesToOpen).toBe(15);
  });

  it('come only from crews with the skill', () => {
    const work = smallWork([{ id: 'A', minutes: 10 }], {
      crews: [
        { id: 'left', people: 4 },
        { id: 'boat', people: 2, skills: ['swim'] },
      ],
    });
    const skilled = {
      ...work,
      tasks: work.tasks.map((one) => ({ ...one, needs: [{ ...one.needs[0]!, skill: 'swim' }] })),
    };
    expect(task(planOf(skilled), 'A').crews).toEqual([{ crew: 'boat', people: 1 }]);
  });

  it('that are attached do only what names them', () => {
    const work = smallWork(
      [
        { id: 'A', minutes: 10 },
        { id: 'B', minutes: 10, crews: ['medic'] },
      ],
      {
        crews: [
          { id: 'medic', people: 1, attached: true },
          { id: 'left', people: 1 },
        ],
      },
    );
    const plan = planOf(work);
    expect(task(plan, 'A').crews[0]?.crew).toBe('left');
    expect(task(plan, 'B').crews[0]?.crew).toBe('medic');
  });

  it('that nobody needs are not taken', () => {
    const work = smallWork(
      [
        { id: 'wait', minutes: 10, people: 0 },
        { id: 'A', minutes: 10, people: 7 },
      ],
      left7,
    );
    expect(planOf(work).minutesToOpen).toBe(10);
  });

  it('are unlimited without crews', () => {
    const rows = ['A', 'B'].map((id) => ({ id, minutes: 10, people: 40, crews: ['nobody'] }));
    const plan = planOf(smallWork(rows), { crews: false });
    expect(plan.minutesToOpen).toBe(10);
    expect(plan.tasks.map(({ crews }) => crews)).toEqual([[], []]);
  });
});

describe('Hours, stores and waits', () => {
  it('keep work to the hours of its crew', () => {
    const rows = [
      { id: 'A', minutes: 10, people: 4 },
      { id: 'B', minutes: 10, people: 4, crews: ['night'] },
    ];
    const work = smallWork(rows, {
      crews: [
        { id: 'day', people: 4, to: 20 },
        { id: 'night', people: 4, from: 15 },
      ],
    });
    const plan = planOf(work);
    expect(task(plan, 'B')).toMatchObject({
      start: 15,
      release: 15,
      reason: { kind: 'window', of: 'night' },
    });
  });

  it('let what must be done before a crew goes go first', () => {
    const rows = [
      { id: 'long', minutes: 30, people: 4, crews: ['day', 'all'] },
      { id: 'last', minutes: 15, people: 4, crews: ['day'] },
    ];
    const work = smallWork(rows, {
      crews: [
        { id: 'day', people: 4, to: 40 },
        { id: 'all', people: 3, from: 90 },
      ],
    });
    expect(refusalOf(work)?.code).toBe('window-too-short');
    const more = { ...work, crews: work.crews.map((crew) => ({ ...crew, people: 4 })) };
    expect(planOf(more).minutesToOpen).toBe(120);
  });

  it('hold a task until its last load is in', () => {
    const work = smallWork([{ id: 'A', minutes: 10, loads: ['first', 'second'] }], {
      ...left7,
      loads: [
        { id: 'first', name: 'First truck', arrives: 5 },
        { id: 'second', name: 'Second truck', arrives: 12.1 },
      ],
    });
    expect(task(planOf(work), 'A')).toMatchObject({
      start: 12.1,
      release: 12.1,
      reason: { kind: 'load', of: 'second' },
    });
  });

  it('keep waits from a finish and from a start, negative ones too', () => {
    const work = smallWork(
      [
        { id: 'A', minutes: 10 },
        { id: 'B', minutes: 10 },
        { id: 'C', minutes: 10 },
      ],
      {
        ...left7,
        links: [
          { from: 'A', to: 'B', counts: 'finish', wait: -4 },
          { from: 'B', to: 'C', counts: 'start', wait: 3 },
        ],
      },
    );
    const plan = planOf(work);
    expect(plan.tasks.map(({ start }) => start)).toEqual([0, 6, 9]);
    expect(task(plan, 'C').reason).toEqual({ kind: 'link', task: 'B' });
  });

  it('plan also where people must pass against a wait so negative that the later task may start first', () => {
    const work = smallWork(
      [
        { id: 'A', minutes: 5, people: 4 },
        { id: 'B', minutes: 50, people: 4 },
      ],
      {
        ...left7,
        links: [{ from: 'A', to: 'B', counts: 'finish', wait: -60 }],
      },
    );
    expect(planOf(work).minutesToOpen).toBe(55);
  });
});

describe('Zones and keep-off', () => {
  const three = (zone: object, more: object = {}) =>
    smallWork(
      ['A', 'B', 'C'].map((id) => ({ id, minutes: 10, people: 3, zones: ['deck'], ...more })),
      { crews: [{ id: 'left', people: 20 }], zones: [{ id: 'deck', ...zone }] },
    );

  it('let in no more people than there is room for, with and without crews', () => {
    for (const crews of [true, false]) {
      expect(planOf(three({ room: 6 }), { crews }).minutesToOpen).toBe(20);
      expect(planOf(three({ room: 5 }), { crews }).minutesToOpen).toBe(30);
      expect(planOf(three({}), { crews }).minutesToOpen).toBe(10);
    }
  });

  it('send people away down to the least where there is less room', () => {
    const work = smallWork([{ id: 'A', minutes: 10, people: [2, 6, 6], zones: ['deck'] }], {
      crews: [{ id: 'left', people: 8 }],
      zones: [{ id: 'deck', room: 3 }],
    });
    expect(task(planOf(work), 'A')).toMatchObject({
      stretch: 2,
      crews: [{ crew: 'left', people: 3 }],
    });
    expect(planOf(work, { crews: false }).minutesToOpen).toBe(20);
  });

  it('close to all others while a keep-off task runs, also zones without a limit and without crews', () => {
    for (const crews of [true, false]) {
      for (const zone of [{}, { room: 50 }, { room: 7 }]) {
        const work = smallWork(
          [
            { id: 'move', minutes: 10, people: 3, zones: ['deck'], keepOff: true },
            { id: 'inside', minutes: 10, people: 3, zones: ['deck', 'bank'] },
            { id: 'outside', minutes: 10, people: 3, zones: ['bank'] },
            { id: 'nobody', minutes: 10, people: 0, zones: ['deck'] },
          ],
          { crews: [{ id: 'left', people: 20 }], zones: [{ id: 'deck', ...zone }] },
        );
        const plan = planOf(work, { crews });
        expect(plan.minutesToOpen).toBe(20);
        expect(Math.abs(task(plan, 'move').start - task(plan, 'inside').start)).toBe(10);
        expect([task(plan, 'outside').start, task(plan, 'nobody').start]).toEqual([0, 0]);
      }
    }
  });

  it('hand room over to and from a keep-off task', () => {
    const work = smallWork(
      [
        { id: 'A', minutes: 10, people: 3, zones: ['deck'] },
        { id: 'go', minutes: 1, people: 0, after: ['A'] },
        { id: 'move', minutes: 10, people: 3, zones: ['deck'], keepOff: true, after: ['go'] },
        { id: 'late', minutes: 30, people: 2, zones: ['deck'], after: ['go'] },
        { id: 'end', minutes: 60, people: 1, after: ['move'] },
      ],
      { crews: [{ id: 'left', people: 20 }] },
    );
    const plan = planOf(work);
    expect(plan.handOvers).toContainEqual({
      from: 'move',
      to: 'late',
      kind: 'zone',
      of: 'deck',
      people: 2,
    });
    expect(task(plan, 'late').reason).toEqual({ kind: 'zone', task: 'move', of: 'deck' });
  });
});

describe('The opening', () => {
  const rows = [
    { id: 'A', minutes: 10, people: 4 },
    { id: 'open', minutes: 5, people: 4, after: ['A'], opens: true },
    { id: 'tidy', minutes: 60, people: 4 },
    { id: 'sign', minutes: 60, people: 4, after: ['open'] },
  ];

  it('is not delayed by what it does not come after', () => {
    const plan = planOf(smallWork(rows, { crews: [{ id: 'left', people: 5 }] }));
    expect(plan).toMatchObject({ opening: 'open', minutesToOpen: 15, lowerBound: 15 });
    expect(plan.tasks.at(-1)?.finish).toBe(135);
  });

  it('is the last hold where no task opens, else the last task', () => {
    const crews = { crews: [{ id: 'left', people: 5 }] };
    const hold = { measures: [], lapsesOn: [], redo: [] };
    const holds = rows.map(({ opens: _, ...row }) =>
      row.id === 'tidy' ? row : { ...row, ...(row.id === 'sign' ? {} : { hold }) },
    );
    expect(planOf(smallWork(holds, crews))).toMatchObject({ opening: 'open', minutesToOpen: 15 });
    const plain = rows.map(({ opens: _, ...row }) => row);
    expect(planOf(smallWork(plain, crews)).minutesToOpen).toBe(135);
  });
});

describe('A plan from now', () => {
  const work = smallWork(
    [
      { id: 'A', minutes: 10, people: 4 },
      { id: 'B', minutes: 10, people: 4, after: ['A'] },
      { id: 'C', minutes: 10, people: 4 },
      { id: 'D', minutes: 10, people: 4, after: ['B', 'C'] },
    ],
    { crews: [{ id: 'left', people: 8 }] },
  );
  const crews = [{ crew: 'left', people: 4 }];

  it('keeps what is done, lets what is at work run on and starts nothing before now', () => {
    const past = {
      now: 14,
      tasks: [
        { task: 'A', status: 'done' as const, start: 0, finish: 12, crews },
        { task: 'C', status: 'at-work' as const, start: 11, crews },
      ],
    };
    const plan = planOf(work, { past });
    expect(task(plan, 'A')).toMatchObject({ start: 0, finish: 12, reason: { kind: 'past' } });
    expect(task(plan, 'C')).toMatchObject({ start: 11, finish: 21, reason: { kind: 'past' } });
    expect(task(plan, 'B')).toMatchObject({ start: 14, release: 14, reason: { kind: 'now' } });
    expect(plan.minutesToOpen).toBe(34);
  });

  it('lets what is overdue finish now, and what told its part finish by that', () => {
    const past = (part: object) => ({
      now: 30,
      tasks: [{ task: 'A', status: 'at-work' as const, start: 0, crews, ...part }],
    });
    expect(task(planOf(work, { past: past({}) }), 'A').finish).toBe(30);
    expect(task(planOf(work, { past: past({ part: 0.25 }) }), 'A').finish).toBe(37.5);
  });

  it('takes up stopped tasks with what is left of them', () => {
    const past = {
      now: 30,
      tasks: [{ task: 'A', status: 'stopped' as const, start: 0, part: 0.6, crews }],
    };
    expect(task(planOf(work, { past }), 'A')).toMatchObject({ start: 30, finish: 34 });
  });

  it('counts nobody free who is at work, also where more are at work than the crew has', () => {
    const past = {
      now: 5,
      tasks: ['A', 'C'].map((id) => ({
        task: id,
        status: 'at-work' as const,
        start: id === 'A' ? 0 : 4,
        crews: [{ crew: 'left', people: 6 }],
      })),
    };
    const plan = planOf(work, { past });
    expect(task(plan, 'B')).toMatchObject({
      start: 14,
      reason: { kind: 'crew', task: 'C', of: 'left' },
    });
  });

  it('is refused for a past of other work', () => {
    const past = {
      now: 5,
      tasks: [{ task: 'Z', status: 'done' as const, start: 0, finish: 1, crews }],
    };
    expect(refusalOf(work, { past })).toEqual({ code: 'task-unknown', of: ['Z'] });
  });

  it('is the past itself when all is done', () => {
    const past = {
      now: 50,
      tasks: work.tasks.map(({ id }) => ({
        task: id,
        status: 'done' as const,
        start: 0,
        finish: 40,
        crews,
      })),
    };
    const plan = planOf(work, { past });
    expect(plan.minutesToOpen).toBe(40);
    expect(plan.lowerBound).toBe(40);
  });
});

describe('What cannot be planned', () => {
  const one = { id: 'A', minutes: 10, people: 4 };

  it.each<[string, Work, { code: string; of: string[] | undefined }]>([
    ['nothing', smallWork([]), { code: 'cannot-plan-yet', of: undefined }],
    [
      'a crew below the least',
      smallWork([one], { crews: [{ id: 'left', people: 3 }] }),
      { code: 'crew-too-small', of: ['A', 'left'] },
    ],
    ['no crew at all', smallWork([one]), { code: 'no-crew-can', of: ['A'] }],
    [
      'a joint task of one crew',
      smallWork([{ ...one, crews: ['left', 'left'], joint: true, people: 2 }], left7),
      { code: 'no-crew-can', of: ['A'] },
    ],
    [
      'a zone below the least',
      smallWork([{ ...one, zones: ['deck'] }], { ...left7, zones: [{ id: 'deck', room: 3 }] }),
      { code: 'zone-too-small', of: ['A'] },
    ],
    [
      'hours below the minutes',
      smallWork([one], { crews: [{ id: 'left', people: 4, from: 5, to: 14 }] }),
      { code: 'window-too-short', of: ['A'] },
    ],
    [
      'hours that are taken',
      smallWork([one, { ...one, id: 'B' }], { crews: [{ id: 'left', people: 4, to: 19 }] }),
      { code: 'window-too-short', of: ['left'] },
    ],
    [
      'a loop',
      smallWork(
        [
          { ...one, after: ['B'] },
          { ...one, id: 'B', after: ['A'] },
        ],
        left7,
      ),
      { code: 'loop-in-order', of: ['A', 'B'] },
    ],
    [
      'faulty work',
      smallWork([{ ...one, after: ['Z'] }], left7),
      { code: 'work-faulty', of: undefined },
    ],
    [
      'too many tasks',
      smallWork(Array.from({ length: 20_001 }, (_, at) => ({ id: `t${at}`, minutes: 1 }))),
      { code: 'too-many-tasks', of: undefined },
    ],
  ])('is refused with a code and a sentence: %s', (_, work, expected) => {
    const plan = makePlan(work, common);
    expect(refusalOf(work)).toEqual(expected);
    expect(plan.ok ? '' : plan.reason.sentence).toMatch(/^[A-Z].*\.$/);
  });

  it('is refused when nobody has the skill', () => {
    const work = smallWork([one], left7);
    const skilled = {
      ...work,
      tasks: [{ ...work.tasks[0]!, needs: [{ ...work.tasks[0]!.needs[0]!, skill: 'swim' }] }],
    };
    expect(refusalOf(skilled)).toEqual({ code: 'no-crew-can', of: ['A'] });
  });
});

describe('The search', () => {
  it('stops when told to, with the best plan so far', () => {
    const rows = Array.from({ length: 40 }, (_, at) => ({
      id: `t${at}`,
      minutes: 1 + ((at * 7) % 11),
      people: 1 + (at % 5),
    }));
    const work = smallWork(rows, { crews: [{ id: 'left', people: 6 }] });
    let asked = 0;
    const shouldStop = () => {
      asked += 1;
      return asked > 3;
    };
    const plan = planOf(work, { effort: 1e9, shouldStop });
    // Once more for each rule not tried any more.
    expect(asked).toBeLessThan(30);
    expect(plan.minutesToOpen).toBeGreaterThanOrEqual(plan.lowerBound);
  });

  it('plans the same for a table as for the same work from elsewhere', () => {
    const read = readTables({ tasks: { file: 't', text: 'task,likely,people\nA,10,3\nB,5,4\n' } });
    const made = smallWork([
      { id: 'A', minutes: 10, people: 3 },
      { id: 'B', minutes: 5, people: 4 },
    ]);
    expect(read.ok && makePlan(read.value, { ...common, crews: false })).toEqual(
      makePlan(made, { ...common, crews: false }),
    );
  });
});
