import { describe, expect, it } from 'vitest';
import type { CommandIo } from '#server/commands/io.ts';
import { run } from '#server/commands/plan.ts';

const tables: Record<string, string> = {
  'tasks.csv':
    'task,name,people,quick,likely,slow,after,crews\nA,Dig,2,1,2,3,,\nB,Form,3,2,3.5,8,A,\nC,Pour,2,6,9,18,B,\nD,Sign,3,1,1,1,A,left\n',
  'crews.csv': 'crew,people\nleft,4\n',
  'links.csv': 'task,after,counts,wait\nD,B,start,3\n',
  'opens.csv':
    'task,quick,likely,slow,after,opens\nA,1,2,3,,\nB,2,4,6,A,yes\nC,9,9,9,B,\nD,3,4,5,A,\n',
  'opens-links.csv': 'task,after,counts,wait\nB,A,finish,5\n',
  'chain.csv': 'task,likely,after,opens\nA,2,,\nB,2,A,yes\n',
  'large.csv': 'task,likely,people,after\nA,2,5,\nB,2,6,A\n',
  'lift.csv':
    'task,likely,crews,people,equipment,light,fixed,with\nA,10,left,2,jack:2,,,weld:1\nB,10,right,2,jack,,,\nC,10,left,2,,day,,weld:2\nD,5,right,2,,,40,\n',
  'lift-crews.csv':
    'crew,people,skilled,strength,lent,rests\nleft,4,weld:2,120:3,right:1:60-90,\nright,4,,,,45-50\n',
  'jacks.csv': 'equipment,name,count\njack,Jack,2\n',
  'few-jacks.csv': 'equipment,count\njack,1\n',
  'order.json': JSON.stringify({
    tasks: [
      {
        id: 'A',
        number: 1,
        name: 'Dig',
        phase: '',
        needs: [{ anyOf: ['left'], people: { least: 1, usual: 2, most: 2 } }],
        minutes: { quick: 40, likely: 40, slow: 40 },
        zones: [],
        keepOff: false,
        opens: true,
        cautions: [],
        tools: [],
        loads: [],
      },
    ],
    links: [],
    crews: [
      {
        id: 'left',
        name: 'Left',
        people: 4,
        skills: [],
        attached: false,
        rests: [{ from: 10, to: 20 }],
      },
    ],
    zones: [],
    loads: [],
    dark: { spells: [{ from: 30, to: 600 }], factor: 2 },
  }),
  'broken.json': '{"tasks": [], "links": [], "crews": [], "zones": []}',
  'bad.csv': 'task,likely,after\nA,soon,\nB,1,Z\n',
  'loop.csv': 'task,likely,after\nA,1,B\nB,1,A\n',
};

async function plan(...args: string[]): Promise<{ code: number; out: string[]; err: string[] }> {
  const out: string[] = [];
  const err: string[] = [];
  const io: CommandIo = {
    out: (line) => out.push(line),
    err: (line) => err.push(line),
    readFile: async (path) => {
      const text = tables[path];
      if (text === undefined) throw new Error(`ENOENT: no such file, open '${path}'`);
      return text;
    },
  };
  return { code: await run(args, io), out, err };
}

async function json(...args: string[]) {
  const { code, out, err } = await plan(...args, '--json');
  expect({ code, err }).toEqual({ code: 0, err: [] });
  return JSON.parse(out.join('\n'));
}

describe('spanwright plan', () => {
  it('prints exactly the documented fields', async () => {
    const report = await json('tasks.csv', '--crews', 'crews.csv', '--by', '20', '--runs', '500');
    expect(Object.keys(report)).toEqual(
      'minutesToOpen lowerBound criticalPath tasks classic forecast health'.split(' '),
    );
    for (const task of report.tasks) {
      expect(Object.keys(task)).toEqual(
        'task crews start finish earlyStart earlyFinish lateStart lateFinish totalFloat freeFloat reason'.split(
          ' ',
        ),
      );
    }
    expect(Object.keys(report.classic)).toEqual(['mean', 'variance', 'chanceBy']);
    expect(Object.keys(report.forecast)).toEqual(
      'runs seed shape mean sd p10 p50 p80 p90 chanceBy'.split(' '),
    );
    expect(report.forecast).toMatchObject({
      runs: 500,
      seed: 1,
      shape: 'pert',
      chanceBy: { minutes: 20 },
    });
    expect(report.classic).toMatchObject({ mean: 16, chanceBy: { minutes: 20 } });
  });

  it('takes the single path to the opening, with its waits, and the critical path to the very end', async () => {
    const report = await json('opens.csv', '--links', 'opens-links.csv', '--runs', '100');
    expect(report.criticalPath).toEqual(['A', 'B', 'C']);
    // A takes 2, then 5 are waited, then B takes 4; C comes after the opening.
    expect(report.minutesToOpen).toBe(11);
    expect(report.classic.mean).toBe(11);
    expect(report.classic.variance).toBeCloseTo((2 / 6) ** 2 + (4 / 6) ** 2, 8);
  });

  it('plans with crews where there is a crew table, and with unlimited people where there is none', async () => {
    const crews = await json('tasks.csv', '--crews', 'crews.csv');
    // B and C come one after the other, and D has no four people with B nor with C.
    expect(crews.minutesToOpen).toBe(17);
    expect(crews.tasks.find((task: { task: string }) => task.task === 'A').crews).toEqual([
      { crew: 'left', people: 2 },
    ]);
    const free = await json('tasks.csv');
    expect(free.minutesToOpen).toBe(16);
    expect(free.criticalPath).toEqual(['A', 'B', 'C']);
    expect(free.tasks.map((task: { crews: unknown[] }) => task.crews)).toEqual([[], [], [], []]);
    expect(free.classic.chanceBy).toBeNull();
    expect(free.forecast.chanceBy).toBeNull();
  });

  it('takes links from their table and the triangular shape', async () => {
    const report = await json('tasks.csv', '--links', 'links.csv', '--shape', 'triangular');
    const sign = report.tasks.find((task: { task: string }) => task.task === 'D');
    // By hand: A takes 2, D starts 3 after B starts.
    expect(sign).toMatchObject({ start: 5, earlyStart: 5, reason: 'waits for Form' });
    // A 2, B 4.5, C 11.
    expect(report.minutesToOpen).toBe(17.5);
  });

  it('says before the table what to mend in the order of work, and that there is nothing', async () => {
    const loose = await plan('opens.csv');
    const at = loose.out.indexOf('Order of work, before the plan is trusted:');
    expect(at).toBeGreaterThan(0);
    expect(loose.out[at + 1]).toMatch(/^ {2}mend: D: nothing waits for it/);
    const { health } = await json('opens.csv');
    expect(health).toMatchObject([{ kind: 'nothing-after', weight: 'mend', tasks: ['D'] }]);
    expect((await plan('chain.csv')).out).toContain('Order of work: nothing to mend.');
    expect((await json('chain.csv')).health).toEqual([]);
  });

  it('names everything that stands in the way of a plan at once', async () => {
    const { code, out, err } = await plan('large.csv', '--crews', 'crews.csv');
    expect({ code, out }).toEqual({ code: 2, out: [] });
    expect(err).toHaveLength(2);
    expect(err[0]).toMatch(/^Task A takes at least 5 people/);
    expect(err[1]).toMatch(/^Task B takes at least 6 people/);
  });

  it('keeps to equipment, skill, light, rests and fixed starts that the tables name', async () => {
    const tables = ['lift.csv', '--crews', 'lift-crews.csv', '--equipment', 'jacks.csv'];
    const report = await json(...tables, '--dark', '15-30', '--runs', '100');
    const times = Object.fromEntries(
      report.tasks.map(
        ({ task, start, finish }: { task: string; start: number; finish: number }) => [
          task,
          [start, finish],
        ],
      ),
    );
    // By hand: the jacks let A and B come one after the other; C wants both welders, and daylight: before 15 or after
    // 30. D is fixed, and done just when its crew rests.
    expect(times.D).toEqual([40, 45]);
    expect(report.minutesToOpen).toBe(45);
    expect(Math.abs(times.A[0] - times.B[0])).toBeGreaterThanOrEqual(10);
    expect(times.C[1] <= 15 || times.C[0] >= 30).toBe(true);
  });

  it('names more equipment than there is, on one line', async () => {
    const { code, err } = await plan('lift.csv', '--equipment', 'few-jacks.csv');
    expect(code).toBe(2);
    expect(err).toEqual([
      'lift.csv, /tasks/0/equipment/0/count: found 2 of jack, expected at most the 1 there are',
    ]);
  });

  it('plans a whole order of work from JSON, with the rests and the dark it names', async () => {
    const report = await json('order.json', '--runs', '100');
    // 10 minutes, a rest of 10, 10 more by day, and 20 that take 40 in the dark.
    expect(report.minutesToOpen).toBe(70);
    expect(report.tasks[0].crews).toEqual([{ crew: 'left', people: 2 }]);
    const broken = await plan('broken.json');
    expect(broken.code).toBe(2);
    expect(broken.err[0]).toMatch(/^broken.json, \/loads: found nothing/);
  });

  it('refuses what goes with a table together with JSON, and spells that are none', async () => {
    expect((await plan('order.json', '--crews', 'crews.csv')).code).toBe(2);
    expect((await plan('order.json', '--dark', '30')).code).toBe(2);
    expect((await plan('order.json', '--dark', '30-20')).code).toBe(2);
    expect((await plan('order.json', '--dark-factor', '0.5')).code).toBe(2);
  });

  it('is the same for the same seed and another for another', async () => {
    const one = await json('tasks.csv', '--seed', '7', '--runs', '200');
    expect(await json('tasks.csv', '--seed', '7', '--runs', '200')).toEqual(one);
    const other = await json('tasks.csv', '--seed', '8', '--runs', '200');
    expect(other.forecast.mean).not.toBe(one.forecast.mean);
  });

  it('prints numbers without noise', async () => {
    const { out } = await plan('tasks.csv', '--json', '--runs', '300');
    for (const number of out.join('\n').match(/\d+\.\d+/g) ?? []) {
      expect(number.split('.')[1]!.length).toBeLessThanOrEqual(9);
    }
  });

  it('reads well without --json', async () => {
    const { code, out } = await plan('tasks.csv', '--crews', 'crews.csv', '--by', '20');
    const text = out.join('\n');
    expect(code).toBe(0);
    expect(text).toContain('Opens 17 min after the start');
    expect(text).toContain('nine in ten by');
    expect(text).toContain('Critical path over links: A, B, C.');
    expect(text).toContain('waits for Dig');
  });

  it('stops searching as soon as nothing faster exists, however long it may go on', async () => {
    const begin = performance.now();
    const plan = await json(
      'tasks.csv',
      '--crews',
      'crews.csv',
      '--seconds',
      '60',
      '--runs',
      '100',
    );
    expect(plan.minutesToOpen).toBe(plan.lowerBound);
    expect(performance.now() - begin).toBeLessThan(30_000);
  });

  it.each<[string, string[], RegExp]>([
    ['no table', [], /one task table/],
    ['two tables', ['tasks.csv', 'crews.csv'], /one task table/],
    ['an unknown option', ['tasks.csv', '--crew', 'x'], /--crew/],
    ['a file that is not there', ['none.csv'], /none\.csv: cannot be read/],
    [
      'a crew file that is not there',
      ['tasks.csv', '--crews', 'none.csv'],
      /none\.csv: cannot be read/,
    ],
    ['minutes in words', ['tasks.csv', '--by', 'noon'], /--by/],
    ['no runs', ['tasks.csv', '--runs', '0'], /--runs/],
    ['half a run', ['tasks.csv', '--runs', '1.5'], /--runs/],
    ['a bad seed', ['tasks.csv', '--seed', 'x'], /--seed/],
    ['a bad shape', ['tasks.csv', '--shape', 'round'], /--shape/],
    ['bad seconds', ['tasks.csv', '--seconds', '-1'], /--seconds/],
    ['a loop', ['loop.csv'], /loop\.csv, row 2, column after: found A, then B, then A again/],
  ])('refuses %s with exit code 2 and a sentence', async (_, args, sentence) => {
    const { code, out, err } = await plan(...args);
    expect({ code, out }).toEqual({ code: 2, out: [] });
    expect(err[0]).toMatch(sentence);
  });

  it('tells each fault on its own line: file, row, column, found, expected', async () => {
    const { code, err } = await plan('bad.csv');
    expect(code).toBe(2);
    expect(err).toEqual([
      'bad.csv, row 2, column likely: found soon, expected minutes from 0 to 1000000',
      'bad.csv, row 3, column after: found Z, expected a task of this table',
    ]);
  });

  it('passes a refusal of the planner on', async () => {
    tables['few.csv'] = 'crew,people\nleft,2\n';
    const { code, err } = await plan('tasks.csv', '--crews', 'few.csv');
    expect(code).toBe(2);
    expect(err[0]).toContain('at least 3 people');
  });
});
