import { describe, expect, it } from 'vitest';
import { applyChanges, type Change } from '#domain/tasks/change.ts';
import { smallWork } from '#tests/support/smallWork.ts';

const work = smallWork(
  [
    { id: 'A', minutes: 10, crews: ['left', 'right'], joint: true, people: 2 },
    { id: 'B', minutes: 5, after: ['A'] },
  ],
  {
    crews: [
      { id: 'left', people: 4 },
      { id: 'right', people: 4 },
    ],
    loads: [{ id: 'truck', name: 'Truck', arrives: 5 }],
  },
);

function changed(...changes: Change[]) {
  const outcome = applyChanges(work, changes);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.reason));
  return outcome.value;
}

function paths(...changes: Change[]) {
  const outcome = applyChanges(work, changes);
  return outcome.ok ? [] : outcome.reason.map(({ path }) => path);
}

describe('Changes to an order of work', () => {
  it('give a task other minutes and people', () => {
    const minutes = { quick: 1, likely: 2, slow: 3 };
    const more = { least: 1, usual: 3, most: 4 };
    const few = { least: 1, usual: 1, most: 1 };
    const [task] = changed({ kind: 'task', task: 'A', minutes, people: [more, few] }).tasks;
    expect(task?.minutes).toEqual(minutes);
    expect(task?.needs.map(({ people }) => people)).toEqual([more, few]);
    expect(task?.needs.map(({ anyOf }) => anyOf)).toEqual([['left'], ['right']]);
  });

  it('fix when and by whom a task is done, and free it again', () => {
    const fix: Change = { kind: 'task', task: 'A', fixed: { start: 30, crews: ['left'] } };
    const [fixed] = changed(fix).tasks;
    expect(fixed?.fixed).toEqual({ start: 30, crews: ['left'] });
    expect(changed(fix, { kind: 'task', task: 'A', minutes: fixed!.minutes }).tasks[0]).toEqual(
      fixed,
    );
    const freed = changed(fix, { kind: 'task', task: 'A', fixed: null }).tasks[0];
    expect(freed).toEqual(work.tasks[0]);
    expect(paths({ ...fix, fixed: { crews: ['none'] } })).toEqual(['/tasks/0/fixed/crews']);
  });

  it('add and remove links', () => {
    const link = { from: 'A', to: 'B', counts: 'start' as const, wait: 2 };
    expect(changed({ kind: 'link-add', link }).links).toHaveLength(2);
    expect(
      changed({ kind: 'link-add', link }, { kind: 'link-remove', from: 'A', to: 'B' }).links,
    ).toEqual([]);
  });

  it('replace or add a crew, and move a load', () => {
    const crew = { ...work.crews[0]!, people: 2 };
    expect(changed({ kind: 'crew', crew }).crews.map(({ people }) => people)).toEqual([2, 4]);
    const third = { ...crew, id: 'third' };
    expect(changed({ kind: 'crew', crew: third }).crews.map(({ id }) => id)).toEqual([
      'left',
      'right',
      'third',
    ]);
    expect(changed({ kind: 'load', load: 'truck', arrives: 30 }).loads[0]?.arrives).toBe(30);
  });

  it('give a crew another name and chief, and leave all else of it', () => {
    const [before, other] = work.crews;
    const name: Change = {
      kind: 'crew-name',
      crew: 'left',
      name: 'Left girder',
      chief: 'Cpl Hill',
      attached: true,
    };
    const led = { ...before, name: 'Left girder', chief: 'Cpl Hill', attached: true };
    expect(changed(name).crews).toEqual([led, other]);
    expect(changed(name, { ...name, chief: null }).crews[0]).not.toHaveProperty('chief');
  });

  it('say when how many of a crew are there, and leave what they do not name', () => {
    const hours = { kind: 'crew-hours', crew: 'left' } as const;
    const rests = [
      { from: 30, to: 60 },
      { from: 90, to: 120, people: 2 },
    ];
    const lent = [{ crew: 'right', people: 1, from: 10, to: 20 }];
    const strength = [{ from: 150, people: 3 }];
    const [before, other] = work.crews;
    expect(changed({ ...hours, rests, lent, strength }).crews).toEqual([
      { ...before, rests, lent, strength },
      other,
    ]);
    const window = { ...before, people: 3, from: 5, to: 240 };
    expect(changed({ ...hours, people: 3, from: 5, to: 240 }).crews[0]).toEqual(window);
    const free: Change = { ...hours, from: null, to: null, people: before!.people };
    expect(changed({ ...hours, people: 3, from: 5, to: 240 }, free).crews[0]).toEqual(before);
    expect(changed({ ...hours, from: 5 }, { ...hours, to: 240 }).crews[0]).toMatchObject({
      from: 5,
      to: 240,
    });
  });

  it('of crews that do not exist, or that more people would leave than there are, are refused', () => {
    const hours = { kind: 'crew-hours', crew: 'left' } as const;
    const lent = (crew: string, people: number) => [{ crew, people, from: 10, to: 20 }];
    expect(paths({ ...hours, crew: 'night', rests: [] })).toEqual(['/changes/0/crew']);
    expect(paths({ ...hours, lent: lent('night', 1) })).toEqual(['/crews/0/lent/0/crew']);
    expect(paths({ ...hours, lent: lent('right', 5) })).toEqual(['/crews/0/lent']);
    expect(paths({ ...hours, rests: [{ from: 10, to: 20, people: 5 }] })).toEqual([
      '/crews/0/rests',
    ]);
  });

  it('leave the given order of work as it is', () => {
    const before = structuredClone(work);
    changed(
      { kind: 'link-remove', from: 'A', to: 'B' },
      { kind: 'load', load: 'truck', arrives: 1 },
    );
    expect(work).toEqual(before);
  });

  it('that cannot be made are all told with their place', () => {
    const people = [{ least: 1, usual: 1, most: 1 }];
    expect(
      paths(
        { kind: 'task', task: 'Z' },
        { kind: 'task', task: 'A', people },
        { kind: 'link-remove', from: 'B', to: 'A' },
        { kind: 'load', load: 'boat', arrives: 1 },
      ),
    ).toEqual(['/changes/0/task', '/changes/1/people', '/changes/2', '/changes/3/load']);
  });

  it('that would make a loop or bad minutes are refused', () => {
    expect(
      paths({ kind: 'link-add', link: { from: 'B', to: 'A', counts: 'finish', wait: 0 } }),
    ).toEqual(['/links']);
    const minutes = { quick: 3, likely: 2, slow: 1 };
    expect(paths({ kind: 'task', task: 'A', minutes })).toEqual(['/tasks/0/minutes']);
  });
});
