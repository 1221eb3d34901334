import { describe, expect, it } from 'vitest';
import { readTables } from '#domain/tasks/tables.ts';

const header = 'task,likely,people,crews,equipment,light,fixed,with\n';
const crewHeader = 'crew,people,skilled,strength,lent,rests\n';

function read(tasks: string, crews?: string, equipment?: string) {
  return readTables({
    tasks: { file: 'tasks.csv', text: header + tasks },
    crews: crews === undefined ? undefined : { file: 'crews.csv', text: crewHeader + crews },
    equipment:
      equipment === undefined
        ? undefined
        : { file: 'equipment.csv', text: `equipment,name,count\n${equipment}` },
  });
}

describe('The further columns of the tables', () => {
  it('say what a task holds, its light, its fixed start and the skill of some of its people', () => {
    const work = read('A,5,4,left,jack:2 winch,Day,30.5,weld:2\nB,5,1,,,any,,\n');
    if (!work.ok) throw new Error(JSON.stringify(work.reason));
    const [a, b] = work.value.tasks;
    expect(a).toMatchObject({
      equipment: [
        { id: 'jack', count: 2 },
        { id: 'winch', count: 1 },
      ],
      daylight: true,
      fixed: { start: 30.5 },
      needs: [{ anyOf: ['left'], with: [{ skill: 'weld', people: 2 }] }],
    });
    for (const field of ['equipment', 'daylight', 'fixed']) expect(b).not.toHaveProperty(field);
  });

  it('say how strong a crew is later, who is lent, who can do what and when it rests', () => {
    const work = read(
      'A,5,1,,,,,\n',
      'left,6,weld:2;dive:1,120:5 240:7,right:2:30-60,180-210 3:420-440\nright,4,,,,\n',
      'jack,Jack,4\n',
    );
    if (!work.ok) throw new Error(JSON.stringify(work.reason));
    expect(work.value.crews[0]).toEqual({
      id: 'left',
      name: 'left',
      people: 6,
      skills: [],
      attached: false,
      skilled: [
        { skill: 'weld', people: 2 },
        { skill: 'dive', people: 1 },
      ],
      strength: [
        { from: 120, people: 5 },
        { from: 240, people: 7 },
      ],
      lent: [{ crew: 'right', people: 2, from: 30, to: 60 }],
      rests: [
        { from: 180, to: 210 },
        { from: 420, to: 440, people: 3 },
      ],
    });
    expect(work.value.equipment).toEqual([{ id: 'jack', name: 'Jack', count: 4 }]);
  });

  it.each([
    ['A,5,1,,jack:0,,,', 'equipment'],
    ['A,5,1,,jack:1:1,,,', 'equipment'],
    ['A,5,1,,jack jack,,,', 'equipment'],
    ['A,5,1,,,night,,', 'light'],
    ['A,5,1,,,,-5,', 'fixed'],
    ['A,5,1,,,,soon,', 'fixed'],
    ['A,5,1,,,,,weld:2', 'with'],
    ['A,5,,left:1 right:1,,,,weld:1', 'with'],
  ])('name the cell at fault of a task: %s', (row, column) => {
    const work = read(`${row}\n`);
    expect(!work.ok && work.reason.map((fault) => [fault.row, fault.column])).toEqual([
      [2, column],
    ]);
  });

  it.each([
    ['left,6,weld,,,', null],
    ['left,6,weld:0,,,', 'skilled'],
    ['left,6,,120,,', 'strength'],
    ['left,6,,120:5 120:6,,', 'strength'],
    ['left,6,,,right:2:30-60,', 'lent'],
    ['left,6,,,left:2:30-60,', 'lent'],
    ['left,6,,,right:2:60-30,', 'lent'],
    ['left,6,,,,210-180', 'rests'],
    ['left,6,,,,10-30 20-40', 'rests'],
    ['left,6,,,,0:10-30', 'rests'],
    ['left,6,,,,2:2:10-30', 'rests'],
  ])('name the cell at fault of a crew: %s', (row, column) => {
    const work = read('A,5,1,,,,,\n', `${row}\n`);
    const faults = work.ok ? [] : work.reason;
    expect(faults.map((fault) => [fault.file, fault.row, fault.column])).toEqual(
      column === null ? [] : [['crews.csv', 2, column]],
    );
  });

  it('name what no cell alone is at fault for by its place', () => {
    const lent = read('A,5,1,,,,,\n', 'left,2,,,right:3:30-60,\nright,4,,,,\n');
    expect(!lent.ok && lent.reason).toMatchObject([{ file: 'crews.csv', path: '/crews/0/lent' }]);
    const jacks = read('A,5,1,,jack:2,,,\n', undefined, 'jack,Jack,1\njack,Jack,2\nwinch,,many\n');
    expect(!jacks.ok && jacks.reason.map(({ row, column }) => [row, column])).toEqual([
      [3, 'equipment'],
      [4, 'count'],
    ]);
  });
});
