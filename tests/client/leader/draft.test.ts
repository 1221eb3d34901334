import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changeSentence } from '#client/screens/leader/draft/changeWords.ts';
import { withChange } from '#client/screens/leader/draft/draft.ts';
import { applyChanges, type Change } from '#domain/tasks/change.ts';
import { smallBuild } from '../support/smallBuild.ts';

const minutes = (quick: number): Change => ({
  kind: 'task',
  task: 'bay-9-left',
  minutes: { quick, likely: quick + 1, slow: quick + 2 },
});
const people: Change = {
  kind: 'task',
  task: 'bay-9-left',
  people: [{ least: 5, usual: 6, most: 7 }],
};
const link = { from: 'bay-9-right', to: 'move-5', counts: 'finish', wait: 5 } as const;
const add: Change = { kind: 'link-add', link };
const removeAdded: Change = { kind: 'link-remove', from: link.from, to: link.to };
const removeOld: Change = { kind: 'link-remove', from: 'bay-9-left', to: 'bay-10-left' };
const crew = smallBuild.work.crews[0]!;
const weaker: Change = { kind: 'crew', crew: { ...crew, people: 6 } };
const load = (arrives: number): Change => ({ kind: 'load', load: 'truck-5', arrives });

const all = (...changes: Change[]): readonly Change[] =>
  changes.reduce<readonly Change[]>(withChange, []);

describe('gathered changes', () => {
  it('hold one change of each thing, the last', () => {
    expect(all(minutes(2), minutes(5))).toEqual([minutes(5)]);
    expect(all(load(90), load(120))).toEqual([load(120)]);
    expect(all({ kind: 'crew', crew: { ...crew, people: 5 } }, weaker)).toEqual([weaker]);
  });

  it('keep minutes when people of the same task change, and the other way round', () => {
    expect(all(minutes(5), people)).toEqual([{ ...minutes(5), ...people }]);
  });

  it('leave nothing of a crew that is put back as it stands', () => {
    const rests: Change = { kind: 'crew-hours', crew: crew.id, rests: [{ from: 60, to: 90 }] };
    const name: Change = {
      kind: 'crew-name',
      crew: crew.id,
      name: 'Left',
      chief: null,
      attached: false,
    };
    expect(all(rests, name)).toEqual([rests, name]);
    expect(all(rests, name, { kind: 'crew-hours', crew: crew.id })).toEqual([name]);
  });

  it('change a crew that is new among the changes where it stands', () => {
    const night = { ...crew, id: 'night', name: 'Night shift' };
    const rests = [{ from: 60, to: 90 }];
    const gathered = all(
      { kind: 'crew', crew: night },
      { kind: 'crew-hours', crew: 'night', rests },
    );
    expect(gathered).toEqual([{ kind: 'crew', crew: { ...night, rests } }]);
    expect(changeSentence(smallBuild, gathered[0]!)).toBe(
      'New crew Night shift, 7 people, rests 12:30 to 13:00',
    );
  });

  it('leave nothing of a link that was added and taken out again', () => {
    expect(all(add, removeAdded)).toEqual([]);
    expect(all(removeOld)).toEqual([removeOld]);
  });

  it('in any order and number fit the order of work as each by itself does, one for each thing', () => {
    const each = fc.constantFrom(minutes(2), minutes(5), people, weaker, load(90), load(120));
    fc.assert(
      fc.property(fc.array(each, { maxLength: 8 }), (changes) => {
        const gathered = all(...changes);
        expect(applyChanges(smallBuild.work, gathered).ok).toBe(true);
        expect(new Set(gathered.map(({ kind }) => kind)).size).toBe(gathered.length);
      }),
    );
  });
});

describe('a change in words', () => {
  for (const [change, sentence] of [
    [minutes(5), 'Bay 9, left side (57): 5/6/7 min instead of 3/4/7'],
    [people, 'Bay 9, left side (57): 5-6-7 people instead of 4-6-8'],
    [
      { kind: 'task', task: 'bay-9-left', fixed: { start: 150, crews: [crew.id] } },
      'Bay 9, left side (57) starts at 14:00, whatever else is planned; Bay 9, left side (57) is done by Left girder',
    ],
    [{ kind: 'task', task: 'bay-9-left', fixed: null }, 'Bay 9, left side (57) starts when it can'],
    [add, 'Move 5 (71) comes after Bay 9, right side (60), 5 min later'],
    [
      { kind: 'link-add', link: { ...link, counts: 'start', wait: 0 } },
      'Move 5 (71) comes after the start of Bay 9, right side (60)',
    ],
    [removeOld, 'Bay 10, left side (58) no longer comes after Bay 9, left side (57)'],
    [weaker, 'Left girder: 6 people instead of 7'],
    [{ kind: 'crew', crew: { ...crew, chief: 'Cpl Hill' } }, 'Left girder: led by Cpl Hill'],
    // The build starts 11:30 at the site.
    [{ kind: 'crew', crew: { ...crew, from: 60 } }, 'Left girder: there from 12:30'],
    [
      { kind: 'crew', crew: { ...crew, id: 'night', name: 'Night shift' } },
      'New crew Night shift, 7 people',
    ],
    [
      { kind: 'crew-name', crew: crew.id, name: 'Left', chief: crew.chief!, attached: true },
      'Left girder: now called Left, attached',
    ],
    [
      {
        kind: 'crew-hours',
        crew: crew.id,
        people: 6,
        to: 390,
        rests: [
          { from: 60, to: 90 },
          { from: 90, to: 120, people: 3 },
        ],
        lent: [
          { crew: 'right', people: 1, from: 120, to: 150 },
          { crew: 'rollers', people: 2, from: 180 },
        ],
        strength: [{ from: 240, people: 5 }],
      },
      'Left girder: 6 people instead of 7, there until 18:00, rests 12:30 to 13:00, 3 people 13:00 to 13:30, lends 1 person to Right girder 13:30 to 14:00, 2 people to Rollers and jacks from 14:30 on, 5 people from 15:30 on',
    ],
    [
      { kind: 'crew-hours', crew: crew.id, rests: [], lent: [], strength: [] },
      'Left girder: as it is',
    ],
    [load(150), 'Truck 5: deck expected 14:00 instead of 13:20'],
  ] as const satisfies readonly (readonly [Change, string])[]) {
    it(`“${sentence}”`, () => {
      expect(changeSentence(smallBuild, change)).toBe(sentence);
    });
  }
});
