import { describe, expect, it } from 'vitest';
import { workFaults } from '#domain/tasks/checkWork.ts';
import type { Work } from '#domain/tasks/work.ts';
import { smallWork } from '#tests/support/smallWork.ts';

const good = smallWork(
  [
    { id: 'A', minutes: [1, 2, 3], crews: ['left'], zones: ['deck'], loads: ['truck'] },
    { id: 'B', minutes: 1, after: ['A'] },
  ],
  {
    crews: [{ id: 'left', people: 4 }],
    loads: [{ id: 'truck', name: 'Truck', arrives: 5 }],
  },
);

function withTask(change: Partial<Work['tasks'][number]>): Work {
  return { ...good, tasks: [{ ...good.tasks[0]!, ...change }, good.tasks[1]!] };
}

const link = good.links[0]!;
const people = { least: 1, usual: 1, most: 1 };

describe('What can be wrong with an order of work', () => {
  it('is nothing in a good one', () => {
    expect(workFaults(good)).toEqual([]);
  });
  const jack = { id: 'jack', name: 'Jack', count: 2 };

  it.each<[string, Work, string]>([
    ['an id twice', { ...withTask({ id: 'B' }), links: [] }, '/tasks/1/id'],
    ['a number twice', withTask({ number: 2 }), '/tasks/1/number'],
    [
      'minutes out of order',
      withTask({ minutes: { quick: 3, likely: 2, slow: 4 } }),
      '/tasks/0/minutes',
    ],
    [
      'minutes that are no number',
      withTask({ minutes: { quick: 1, likely: Number.NaN, slow: 4 } }),
      '/tasks/0/minutes',
    ],
    [
      'people out of order',
      withTask({ needs: [{ anyOf: [], people: { ...people, least: 2 } }] }),
      '/tasks/0/needs/0/people',
    ],
    [
      'an unknown crew',
      withTask({ needs: [{ anyOf: ['right'], people }] }),
      '/tasks/0/needs/0/anyOf',
    ],
    ['an unknown zone', withTask({ zones: ['roof'] }), '/tasks/0/zones'],
    ['an unknown load', withTask({ loads: ['boat'] }), '/tasks/0/loads'],
    [
      'an unknown redo',
      withTask({ hold: { measures: [], lapsesOn: [], redo: ['Z'] } }),
      '/tasks/0/hold/redo',
    ],
    [
      'two that open',
      { ...good, tasks: good.tasks.map((task) => ({ ...task, opens: true })) },
      '/tasks/1/opens',
    ],
    ['an unknown end of a link', { ...good, links: [{ ...link, from: 'Z' }] }, '/links/0/from'],
    ['a link to itself', { ...good, links: [{ ...link, from: 'B' }] }, '/links/0'],
    ['a link twice', { ...good, links: [link, { ...link, wait: 5 }] }, '/links/1'],
    [
      'an endless wait',
      { ...good, links: [{ ...link, wait: Number.POSITIVE_INFINITY }] },
      '/links/0/wait',
    ],
    [
      'a loop',
      { ...good, links: [link, { ...link, from: 'B', to: 'A', counts: 'start' as const }] },
      '/links',
    ],
    ['a crew twice', { ...good, crews: [good.crews[0]!, good.crews[0]!] }, '/crews/1/id'],
    [
      'hours that end before they begin',
      { ...good, crews: [{ ...good.crews[0]!, from: 9, to: 9 }] },
      '/crews/0/to',
    ],
    [
      'equipment that is not there',
      { ...withTask({ equipment: [{ id: 'crane', count: 1 }] }), equipment: [jack] },
      '/tasks/0/equipment/0/id',
    ],
    [
      'more equipment than there is',
      { ...withTask({ equipment: [{ id: 'jack', count: 3 }] }), equipment: [jack] },
      '/tasks/0/equipment/0/count',
    ],
    [
      'equipment held twice',
      withTask({
        equipment: [
          { id: 'jack', count: 1 },
          { id: 'jack', count: 1 },
        ],
      }),
      '/tasks/0/equipment/1/id',
    ],
    ['equipment twice', { ...good, equipment: [jack, jack] }, '/equipment/1/id'],
    ['an unknown crew fixed', withTask({ fixed: { crews: ['none'] } }), '/tasks/0/fixed/crews'],
    ['a start fixed for never', withTask({ fixed: { start: 2e6 } }), '/tasks/0/fixed/start'],
    [
      'more people with a skill than people',
      withTask({ needs: [{ anyOf: [], people, with: [{ skill: 'weld', people: 9 }] }] }),
      '/tasks/0/needs/0/with/0/people',
    ],
    [
      'a rest that ends before it begins',
      { ...good, crews: [{ ...good.crews[0]!, rests: [{ from: 9, to: 9 }] }] },
      '/crews/0/rests/0/to',
    ],
    [
      'rests that overlap',
      {
        ...good,
        crews: [
          {
            ...good.crews[0]!,
            rests: [
              { from: 9, to: 30 },
              { from: 20, to: 40 },
            ],
          },
        ],
      },
      '/crews/0/rests/1/from',
    ],
    [
      'strengths out of order',
      {
        ...good,
        crews: [
          {
            ...good.crews[0]!,
            strength: [
              { from: 9, people: 2 },
              { from: 9, people: 3 },
            ],
          },
        ],
      },
      '/crews/0/strength/1/from',
    ],
    [
      'a skill twice',
      {
        ...good,
        crews: [
          {
            ...good.crews[0]!,
            skilled: [
              { skill: 'weld', people: 1 },
              { skill: 'weld', people: 1 },
            ],
          },
        ],
      },
      '/crews/0/skilled/1/skill',
    ],
    [
      'nights out of order',
      {
        ...good,
        dark: {
          spells: [
            { from: 600, to: 900 },
            { from: 100, to: 200 },
          ],
          factor: 2,
        },
      },
      '/dark/spells/1/from',
    ],
    ['a zone twice', { ...good, zones: [good.zones[0]!, good.zones[0]!] }, '/zones/1/id'],
    ['a load twice', { ...good, loads: [good.loads[0]!, good.loads[0]!] }, '/loads/1/id'],
  ])('is told with its place: %s', (_, work, path) => {
    expect(workFaults(work).map((fault) => fault.path)).toEqual([path]);
  });

  it('is not that tasks name equipment where nobody says what there is', () => {
    expect(workFaults(withTask({ equipment: [{ id: 'crane', count: 9 }] }))).toEqual([]);
  });

  it('is not that tasks name crews where there are none to plan with', () => {
    expect(workFaults({ ...good, crews: [] })).toEqual([]);
  });

  it('is more than 20,000 tasks', () => {
    const tasks = Array.from({ length: 20_001 }, (_, at) => ({ id: `t${at}`, minutes: 1 }));
    expect(workFaults(smallWork(tasks)).map((fault) => fault.path)).toEqual(['/tasks']);
  });
});
