import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Fault } from '#domain/fault.ts';
import { workFaults } from '#domain/tasks/checkWork.ts';
import { readTables } from '#domain/tasks/tables.ts';
import type { Work } from '#domain/tasks/work.ts';
import { randomWork } from '#tests/support/randomWork.ts';
import { writeTables } from '#tests/support/writeTables.ts';

type Texts = { tasks: string; links?: string; crews?: string };

function read({ tasks, links, crews }: Texts) {
  return readTables({
    tasks: { file: 'tasks.csv', text: tasks },
    ...(links === undefined ? {} : { links: { file: 'links.csv', text: links } }),
    ...(crews === undefined ? {} : { crews: { file: 'crews.csv', text: crews } }),
  });
}

function workOf(texts: Texts): Work {
  const work = read(texts);
  if (!work.ok) throw new Error(JSON.stringify(work.reason));
  return work.value;
}

function faultsOf(texts: Texts): Fault[] {
  const work = read(texts);
  return work.ok ? [] : work.reason;
}

/** Where the faults are, as "file row column". */
function places(texts: Texts): string[] {
  return faultsOf(texts).map(({ file, row, column }) => `${file} ${row ?? '-'} ${column ?? '-'}`);
}

describe('Tables of tasks', () => {
  it('need no more than task and likely', () => {
    const work = workOf({ tasks: 'likely,task\n5,A\n2.5,B\n' });
    expect(
      work.tasks.map(({ id, number, name, minutes }) => ({ id, number, name, minutes })),
    ).toEqual([
      { id: 'A', number: 1, name: 'A', minutes: { quick: 5, likely: 5, slow: 5 } },
      { id: 'B', number: 2, name: 'B', minutes: { quick: 2.5, likely: 2.5, slow: 2.5 } },
    ]);
    expect(work.tasks[0]?.needs).toEqual([{ anyOf: [], people: { least: 1, usual: 1, most: 1 } }]);
    expect(work.crews).toEqual([]);
  });

  it('give people as one number or as least, usual and most', () => {
    const work = workOf({ tasks: 'task,likely,people\nA,5,6\nB,5,4-6-8\nC,5,0\n' });
    expect(work.tasks.map(({ needs }) => needs[0]?.people)).toEqual([
      { least: 6, usual: 6, most: 6 },
      { least: 4, usual: 6, most: 8 },
      { least: 0, usual: 0, most: 0 },
    ]);
  });

  it('make a joint task of crews with people, and a choice of crews without', () => {
    const work = workOf({
      tasks: 'task,likely,crews,people\nA,5,left:4 brace:2-3-4,\nB,5,left;right,3\n',
    });
    expect(work.tasks[0]?.needs).toEqual([
      { anyOf: ['left'], people: { least: 4, usual: 4, most: 4 } },
      { anyOf: ['brace'], people: { least: 2, usual: 3, most: 4 } },
    ]);
    expect(work.tasks[1]?.needs).toEqual([
      { anyOf: ['left', 'right'], people: { least: 3, usual: 3, most: 3 } },
    ]);
  });

  it('separate lists by blanks, semicolons or commas', () => {
    const work = workOf({
      tasks: 'task,likely,after,zones\nA,1,,\nB,1,,\nC,1,"A, B",x;y\nD,1,A;B C,x y\n',
    });
    expect(work.links.map(({ from, to }) => `${from}-${to}`)).toEqual([
      'A-C',
      'B-C',
      'A-D',
      'B-D',
      'C-D',
    ]);
    expect(work.zones).toEqual([
      { id: 'x', name: 'x', bank: 'near' },
      { id: 'y', name: 'y', bank: 'near' },
    ]);
  });

  it.each([
    ['yes', true],
    ['Y', true],
    ['TRUE', true],
    ['1', true],
    ['x', true],
    ['no', false],
    ['N', false],
    ['False', false],
    ['0', false],
    ['', false],
  ])('read %j in keepoff, hold and opens as %s', (word, meant) => {
    const [task] = workOf({
      tasks: `task,likely,keepoff,hold,opens\nA,1,${word},${word},${word}\n`,
    }).tasks;
    expect([task?.keepOff, task?.hold !== undefined, task?.opens]).toEqual([meant, meant, meant]);
  });

  it('are read back as they were written, with links, waits and crews', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.integer({ min: 1, max: 30 }),
        (seed, tasks) => {
          const options = {
            tasks,
            crews: seed % 4,
            zones: 3,
            waits: true,
            joint: true,
            keepOff: true,
          };
          const more = {
            equipment: seed % 3 === 0,
            rests: true,
            strength: seed % 5 < 3,
            skilled: seed % 7 < 3,
            dark: true,
          };
          const whole = { ...options, ...more, hours: true, holds: true, opens: true };
          const { dark: _, ...drawn } = randomWork(seed, whole);
          const [first, ...others] = drawn.tasks;
          // A table says so only of tasks that one crew does, and nothing of what is not there.
          const tasksWritten = [{ ...first!, fixed: { start: seed % 90 } }, ...others].map(
            (task) => {
              const { equipment = [], ...rest } = task;
              const one = task.needs.length === 1;
              const needs = task.needs.map(({ with: some, skill: __, ...need }) => ({
                ...need,
                ...(one && some ? { with: some } : {}),
              }));
              return { ...rest, needs, ...(equipment.length > 0 ? { equipment } : {}) };
            },
          );
          const work = { ...drawn, tasks: tasksWritten };
          const zones = new Set(work.tasks.flatMap((task) => task.zones));
          const again = readTables(writeTables(work, seed % 2 === 0 ? '\n' : '\r\n'));
          if (!again.ok) throw new Error(JSON.stringify(again.reason));
          expect(again.value.tasks).toEqual(work.tasks);
          expect(new Set(again.value.links.map(linkText))).toEqual(
            new Set(work.links.map(linkText)),
          );
          expect(again.value.crews).toEqual(work.crews);
          expect(again.value.equipment).toEqual(work.equipment);
          expect(new Set(again.value.zones.map(({ id }) => id))).toEqual(zones);
          expect(workFaults(again.value)).toEqual([]);
        },
      ),
    );
  });
});

function linkText({ from, to, counts, wait }: Work['links'][number]): string {
  return `${from} ${to} ${counts} ${wait}`;
}

describe('Tables of links and crews', () => {
  it('add waits, negative ones too, and links that count from a start', () => {
    const { links } = workOf({
      tasks: 'task,likely\nA,5\nB,5\n',
      links: 'task,after,counts,wait\nB,A,start,2\nB,A,,-1.5\n',
    });
    expect(links).toEqual([
      { from: 'A', to: 'B', counts: 'start', wait: 2 },
      { from: 'A', to: 'B', counts: 'finish', wait: -1.5 },
    ]);
  });

  it('give a link that the task table names too its wait', () => {
    const tasks = 'task,likely,after\nA,4,\nB,1,A\n';
    expect(workOf({ tasks, links: 'task,after,wait\nB,A,-2\n' }).links).toEqual([
      { from: 'A', to: 'B', counts: 'finish', wait: -2 },
    ]);
    expect(workOf({ tasks, links: 'task,after,counts,wait\nB,A,start,5\n' }).links).toEqual([
      { from: 'A', to: 'B', counts: 'finish', wait: 0 },
      { from: 'A', to: 'B', counts: 'start', wait: 5 },
    ]);
  });

  it('give crews hours and skills', () => {
    const { crews } = workOf({
      tasks: 'task,likely\nA,5\n',
      crews: 'crew,people,from,to,skills,name\nleft,7,,120,rig swim,Left girder\nfar,4,30,,,\n',
    });
    expect(crews).toEqual([
      {
        id: 'left',
        name: 'Left girder',
        people: 7,
        to: 120,
        skills: ['rig', 'swim'],
        attached: false,
      },
      { id: 'far', name: 'far', people: 4, from: 30, skills: [], attached: false },
    ]);
  });

  it('need not name the crews of tasks where there is no crew table', () => {
    const work = workOf({ tasks: 'task,likely,crews\nA,5,left\n' });
    expect(work.tasks[0]?.needs[0]?.anyOf).toEqual(['left']);
  });
});

describe('Faults in tables', () => {
  it.each<[string, Texts, string[]]>([
    ['no header', { tasks: '' }, ['tasks.csv 1 -']],
    ['no tasks', { tasks: 'task,likely\n' }, ['tasks.csv 2 -']],
    ['an unknown column', { tasks: 'task,likely,cost\nA,1,2\n' }, ['tasks.csv 1 cost']],
    [
      'bad rows beside an unknown column',
      { tasks: 'task,likely,cost\nA,x,2\nA,-1,2\n' },
      ['tasks.csv 1 cost', 'tasks.csv 2 likely', 'tasks.csv 3 task', 'tasks.csv 3 likely'],
    ],
    ['a column twice', { tasks: 'task,likely,likely\nA,1,2\n' }, ['tasks.csv 1 likely']],
    ['a required column missing', { tasks: 'task,name\nA,x\n' }, ['tasks.csv 1 likely']],
    ['a row too short', { tasks: 'task,likely,name\nA,1\n' }, ['tasks.csv 2 -']],
    ['a row too long', { tasks: 'task,likely\nA,1,2\n' }, ['tasks.csv 2 -']],
    ['no id', { tasks: 'task,likely,name\n,1,x\n' }, ['tasks.csv 2 task']],
    ['a bad id', { tasks: 'task,likely\nA b,1\n' }, ['tasks.csv 2 task']],
    ['an id twice', { tasks: 'task,likely\nA,1\nA,2\n' }, ['tasks.csv 3 task']],
    ['no likely', { tasks: 'task,likely,name\nA,,x\n' }, ['tasks.csv 2 likely']],
    ['words for minutes', { tasks: 'task,likely\nA,soon\n' }, ['tasks.csv 2 likely']],
    ['negative minutes', { tasks: 'task,likely\nA,-1\n' }, ['tasks.csv 2 likely']],
    [
      'endless minutes',
      { tasks: 'task,likely\nA,Infinity\nB,1e999\nC,0x10\n' },
      ['tasks.csv 2 likely', 'tasks.csv 3 likely', 'tasks.csv 4 likely'],
    ],
    ['a decimal comma', { tasks: 'task,likely\nA,"2,5"\n' }, ['tasks.csv 2 likely']],
    ['quick without slow', { tasks: 'task,quick,likely\nA,1,2\n' }, ['tasks.csv 2 slow']],
    ['slow without quick', { tasks: 'task,likely,slow\nA,1,2\n' }, ['tasks.csv 2 quick']],
    ['quick over likely', { tasks: 'task,quick,likely,slow\nA,3,2,4\n' }, ['tasks.csv 2 quick']],
    ['likely over slow', { tasks: 'task,quick,likely,slow\nA,1,5,4\n' }, ['tasks.csv 2 slow']],
    [
      'bad people',
      { tasks: 'task,likely,people\nA,1,six\nB,1,2.5\nC,1,3-2-4\nD,1,1-2\nE,1,501\n' },
      [
        'tasks.csv 2 people',
        'tasks.csv 3 people',
        'tasks.csv 4 people',
        'tasks.csv 5 people',
        'tasks.csv 6 people',
      ],
    ],
    [
      'crews with and without people',
      { tasks: 'task,likely,crews\nA,1,left:4 brace\n' },
      ['tasks.csv 2 crews'],
    ],
    [
      'bad people of a crew',
      { tasks: 'task,likely,crews\nA,1,left:x brace:2\n' },
      ['tasks.csv 2 crews'],
    ],
    ['a crew twice', { tasks: 'task,likely,crews\nA,1,left:2 left:3\n' }, ['tasks.csv 2 crews']],
    [
      'people that joint crews do not add up to',
      { tasks: 'task,likely,crews,people\nA,1,left:2 right:3,6\n' },
      ['tasks.csv 2 people'],
    ],
    ['an unknown task in after', { tasks: 'task,likely,after\nA,1,Z\n' }, ['tasks.csv 2 after']],
    ['itself in after', { tasks: 'task,likely,after\nA,1,A\n' }, ['tasks.csv 2 after']],
    [
      'a task twice in after',
      { tasks: 'task,likely,after\nA,1,\nB,1,A A\n' },
      ['tasks.csv 3 after'],
    ],
    ['neither yes nor no', { tasks: 'task,likely,hold\nA,1,perhaps\n' }, ['tasks.csv 2 hold']],
    ['two that open', { tasks: 'task,likely,opens\nA,1,x\nB,1,x\n' }, ['tasks.csv 3 opens']],
    ['a bad zone', { tasks: 'task,likely,zones\nA,1,a/b\n' }, ['tasks.csv 2 zones']],
    ['a quote out of place', { tasks: 'task,likely,name\nA,1,x"y\n' }, ['tasks.csv 2 -']],
    ['text that is not UTF-8', { tasks: 'task,likely,name\nA,1,\uFFFD\n' }, ['tasks.csv - -']],
    [
      'a name too long',
      { tasks: `task,likely,name\nA,1,${'n'.repeat(121)}\n` },
      ['tasks.csv 2 name'],
    ],
    [
      'an unknown crew',
      { tasks: 'task,likely,crews\nA,1,left\n', crews: 'crew,people\nright,4\n' },
      ['tasks.csv 2 crews'],
    ],
    ['no crews', { tasks: 'task,likely\nA,1\n', crews: 'crew,people\n' }, ['crews.csv 2 -']],
    [
      'a crew twice in its table',
      { tasks: 'task,likely\nA,1\n', crews: 'crew,people\na,4\na,5\n' },
      ['crews.csv 3 crew'],
    ],
    [
      'bad people in the crew table',
      { tasks: 'task,likely\nA,1\n', crews: 'crew,people\na,4-5-6\nb,-1\nc,\n' },
      ['crews.csv 2 people', 'crews.csv 3 people', 'crews.csv 4 people'],
    ],
    [
      'hours that end before they begin',
      { tasks: 'task,likely\nA,1\n', crews: 'crew,people,from,to\na,4,30,30\nb,4,,0\n' },
      ['crews.csv 2 to', 'crews.csv 3 to'],
    ],
    [
      'unknown tasks in links',
      { tasks: 'task,likely\nA,1\n', links: 'task,after\nA,Y\nZ,A\n' },
      ['links.csv 2 after', 'links.csv 3 task'],
    ],
    [
      'a link to itself',
      { tasks: 'task,likely\nA,1\n', links: 'task,after\nA,A\n' },
      ['links.csv 2 after'],
    ],
    [
      'a link twice',
      { tasks: 'task,likely\nA,1\nB,1\n', links: 'task,after,wait\nB,A,5\nB,A,6\n' },
      ['links.csv 3 after'],
    ],
    [
      'a link that counts neither',
      { tasks: 'task,likely\nA,1\nB,1\n', links: 'task,after,counts\nB,A,end\n' },
      ['links.csv 2 counts'],
    ],
    [
      'a wait in words',
      { tasks: 'task,likely\nA,1\nB,1\n', links: 'task,after,wait\nB,A,long\n' },
      ['links.csv 2 wait'],
    ],
  ])('are told with file, row and column: %s', (_, texts, expected) => {
    expect(places(texts)).toEqual(expected);
    for (const { found, expected: wanted } of faultsOf(texts)) {
      expect(found).not.toBe('');
      expect(wanted).not.toBe('');
    }
  });

  it('come all at once, table by table and row by row', () => {
    const tasks = 'task,likely,after,crews\nA,x,,left\nB,1,Q,\nB,2,,\n';
    expect(places({ tasks, crews: 'crew,people\nright,z\n', links: 'task,after\nB,R\n' })).toEqual([
      'tasks.csv 2 likely',
      'tasks.csv 2 crews',
      'tasks.csv 3 after',
      'tasks.csv 4 task',
      'links.csv 2 after',
      'crews.csv 2 people',
    ]);
  });

  it('name the tasks of a loop, also of one through the link table', () => {
    const loop = faultsOf({
      tasks: 'task,likely,after\nA,1,\nB,1,A\nC,1,B\n',
      links: 'task,after,counts,wait\nA,C,start,-9\n',
    });
    expect(loop).toHaveLength(1);
    expect(loop[0]).toMatchObject({ file: 'tasks.csv', column: 'after' });
    for (const id of ['A', 'B', 'C']) expect(loop[0]?.found).toContain(id);
  });

  it('name a loop beside other faults', () => {
    const faults = faultsOf({ tasks: 'task,likely,after\nA,x,C\nB,1,A\nC,1,B\nD,1,D\n' });
    expect(faults.map(({ row, column }) => `${row} ${column}`)).toEqual(['2 likely', '5 after']);
    const looped = faultsOf({ tasks: 'task,likely,after\nA,1,C\nB,1,A\nC,1,B\nD,1,D\n' });
    expect(looped.map(({ found }) => found)).toEqual(['A, then B, then C, then A again', 'D']);
  });

  it('do not include mentions of a row that is itself at fault', () => {
    expect(places({ tasks: 'task,likely,after\nA,soon,\nB,1,A\n' })).toEqual([
      'tasks.csv 2 likely',
    ]);
    expect(places({ tasks: 'task,likely,after\nA,1\nB,1,A\n' })).toEqual(['tasks.csv 2 -']);
  });

  it('stop at 20,000 rows', () => {
    const rows = (count: number) =>
      `task,likely\n${Array.from({ length: count }, (_, at) => `t${at},1`).join('\n')}`;
    expect(workOf({ tasks: rows(20_000) }).tasks).toHaveLength(20_000);
    expect(faultsOf({ tasks: rows(20_001) })[0]?.expected).toContain('20000');
  });

  it('never throw, whatever the text', () => {
    const line = fc.array(
      fc.oneof(
        fc.string(),
        fc.constantFrom('task', 'likely', 'after', 'A', 'B', '1', '"', ',', '\n', '\r\n'),
      ),
    );
    fc.assert(
      fc.property(line, line, line, (tasks, links, crews) => {
        const work = read({
          tasks: tasks.join(','),
          links: links.join(','),
          crews: crews.join(','),
        });
        if (work.ok) expect(workFaults(work.value)).toEqual([]);
        else expect(work.reason.length).toBeGreaterThan(0);
      }),
    );
  });
});
