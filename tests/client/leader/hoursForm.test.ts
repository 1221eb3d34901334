import { describe, expect, it } from 'vitest';
import {
  freshKey,
  hoursChange,
  hoursIn,
  type TypedHours,
  typedHoursOf,
} from '#client/screens/leader/hours/hoursForm.ts';
import { smallBuild } from '../support/smallBuild.ts';

/** The build starts 11:30 at the site. */
const left = {
  ...smallBuild.work.crews[0]!,
  from: 30,
  to: 390,
  rests: [
    { from: 60, to: 90 },
    { from: 90, to: 120, people: 3 },
  ],
  lent: [
    { crew: 'right', people: 2, from: 120, to: 150 },
    { crew: 'rollers', people: 1, from: 800 },
  ],
  strength: [
    { from: 240, people: 5 },
    { from: 300, people: 0 },
  ],
};
const blank: TypedHours = { people: '7', from: '', to: '', rests: [], lent: [], strength: [] };

const read = (typed: TypedHours) => hoursIn(typed, smallBuild, smallBuild.work.crews.slice(1));

describe('The hours of a crew as typed', () => {
  it('are times of day at the site, a time after midnight with the next day', () => {
    const typed = typedHoursOf(left, smallBuild);
    expect([typed.from, typed.to]).toEqual(['12:00', '18:00']);
    expect(typed.rests.map(({ from, to, people }) => [from, to, people])).toEqual([
      ['12:30', '13:00', ''],
      ['13:00', '13:30', '3'],
    ]);
    // 800 minutes after 11:30 it is 00:50, and that is the first such time after the start.
    expect(typed.lent.map(({ from, to }) => [from, to])).toEqual([
      ['13:30', '14:00'],
      ['00:50', ''],
    ]);
  });

  it('come back as they were, and then nothing of the crew changes', () => {
    const { hours, faults } = read(typedHoursOf(left, smallBuild));
    expect(faults).toEqual({});
    expect(hours && hoursChange(left, hours)).toEqual({ kind: 'crew-hours', crew: 'left' });
  });

  it('change only what is other, and say that a window and lists are gone', () => {
    const { hours } = read({ ...blank, people: '6' });
    expect(hours && hoursChange(left, hours)).toEqual({
      kind: 'crew-hours',
      crew: 'left',
      people: 6,
      from: null,
      to: null,
      rests: [],
      lent: [],
      strength: [],
    });
    const typed = typedHoursOf(left, smallBuild);
    const later = read({ ...typed, to: '19:00' }).hours;
    expect(later && hoursChange(left, later)).toEqual({
      kind: 'crew-hours',
      crew: 'left',
      to: 450,
    });
  });

  it('stay as they were where they were not in whole minutes of the clock', () => {
    const odd = {
      ...left,
      rests: [{ from: 60.25, to: 89.5 }],
      strength: [{ from: 0.5, people: 6 }],
    };
    const { hours } = read(typedHoursOf(odd, smallBuild));
    expect(hours && hoursChange(odd, hours)).toEqual({ kind: 'crew-hours', crew: 'left' });
  });

  it('come in order of time, however they were typed', () => {
    const rest = (key: number, from: string, to: string) => ({ key, from, to, people: '' });
    const step = (key: number, from: string, people: string) => ({ key, from, people });
    const { hours } = read({
      ...blank,
      rests: [rest(0, '18:00', '18:30'), rest(1, '12:30', '1300')],
      strength: [step(0, '17:00', '4'), step(1, '16:00', '9')],
    });
    expect(hours?.rests).toEqual([
      { from: 60, to: 90 },
      { from: 390, to: 420 },
    ]);
    expect(hours?.strength?.map(({ people }) => people)).toEqual([9, 4]);
  });

  const rest = { key: 4, from: '12:30', to: '13:00', people: '' };
  const lent = { key: 0, crew: 'right', from: '12:30', to: '', people: '2' };
  const step = { key: 1, from: '12:30', people: '5' };
  for (const [typed, field] of [
    [{ people: '7.5' }, 'people'],
    [{ people: '' }, 'people'],
    [{ from: 'noon' }, 'from'],
    [{ from: '251000Z NOV 26' }, 'from'],
    [{ from: '13:00', to: '12:00' }, 'to'],
    [{ rests: [{ ...rest, from: '' }] }, 'rests.4.from'],
    [{ rests: [{ ...rest, to: '' }] }, 'rests.4.to'],
    [{ rests: [{ ...rest, to: '12:30' }] }, 'rests.4.to'],
    [{ rests: [{ ...rest, people: '0' }] }, 'rests.4.people'],
    [
      {
        rests: [
          { ...rest, key: 0 },
          { ...rest, from: '12:45' },
        ],
      },
      'rests.4.from',
    ],
    [{ lent: [{ ...lent, crew: '' }] }, 'lent.0.crew'],
    [{ lent: [{ ...lent, crew: 'left' }] }, 'lent.0.crew'],
    [{ lent: [{ ...lent, people: '' }] }, 'lent.0.people'],
    [{ lent: [{ ...lent, from: 'later' }] }, 'lent.0.from'],
    [{ lent: [{ ...lent, to: '12:00' }] }, 'lent.0.to'],
    [{ strength: [{ ...step, people: '501' }] }, 'strength.1.people'],
    [{ strength: [{ ...step, from: '' }] }, 'strength.1.from'],
    [{ strength: [{ ...step, key: 0 }, step] }, 'strength.1.from'],
  ] as const satisfies readonly (readonly [Partial<TypedHours>, string])[]) {
    it(`with ${JSON.stringify(typed)} have a fault at “${field}”`, () => {
      const { hours, faults } = read({ ...blank, ...typed });
      expect(hours).toBeNull();
      expect(Object.keys(faults)).toEqual([field]);
    });
  }

  it('are kept to the minute where the build starts some seconds into one', () => {
    const site = { ...smallBuild, start: smallBuild.start.replace(/00(\.000)?Z$/, '40Z') };
    const crew = {
      ...left,
      from: 0,
      to: 390,
      lent: [],
      strength: [],
      rests: [{ from: 60, to: 90 }],
    };
    const change = (more: Partial<TypedHours>) => {
      const { hours } = hoursIn({ ...typedHoursOf(crew, site), ...more }, site, []);
      return hours && Object.keys(hoursChange(crew, hours));
    };
    expect(change({})).toEqual(['kind', 'crew']);
    expect(change({ to: '18:01' })).toEqual(['kind', 'crew', 'to']);
    expect(change({ to: '17:59' })).toEqual(['kind', 'crew', 'to']);
  });

  it('give every new line a key of its own', () => {
    expect(freshKey([])).toBe(0);
    expect(freshKey([{ key: 3 }, { key: 1 }])).toBe(4);
  });
});
