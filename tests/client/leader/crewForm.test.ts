import { describe, expect, it } from 'vitest';
import { crewIn, emptyCrew, typedOf } from '#client/screens/leader/crews/crewForm.ts';
import { smallBuild } from '../support/smallBuild.ts';

const none = new Set<string>();
const left = {
  ...smallBuild.work.crews[0]!,
  skills: ['welder'],
  from: 30,
  to: 150,
  rests: [{ from: 60, to: 80 }],
  strength: [{ from: 90, people: 5 }],
};

describe('a crew as typed', () => {
  it('comes back as it was, with what the form does not show', () => {
    const typed = typedOf(left, smallBuild);
    // The build starts 11:30 at the site.
    expect([typed.from, typed.to]).toEqual(['12:00', '14:00']);
    expect(crewIn(typed, smallBuild, left, none).crew).toEqual(left);
  });

  it('is there for the whole build when no times are typed', () => {
    const { crew } = crewIn(
      { ...typedOf(left, smallBuild), from: '', to: '' },
      smallBuild,
      left,
      none,
    );
    expect(crew).not.toHaveProperty('from');
    expect(crew).not.toHaveProperty('to');
  });

  for (const [change, field] of [
    [{ name: ' ' }, 'name'],
    [{ people: '7.5' }, 'people'],
    [{ people: '501' }, 'people'],
    [{ to: '12:00' }, 'hours'],
    [{ from: 'noon' }, 'hours'],
    [{ id: 'night shift' }, 'id'],
  ] as const) {
    it(`with ${JSON.stringify(change)} has its fault at “${field}”`, () => {
      const { crew, faults } = crewIn(
        { ...typedOf(left, smallBuild), ...change },
        smallBuild,
        left,
        none,
      );
      expect(crew).toBeNull();
      expect(Object.keys(faults)).toEqual([field]);
    });
  }

  it('that is new takes no id that another crew has', () => {
    const typed = { ...emptyCrew, id: 'left', name: 'Another', people: '4' };
    expect(Object.keys(crewIn(typed, smallBuild, null, new Set(['left'])).faults)).toEqual(['id']);
    expect(crewIn(typed, smallBuild, null, none).crew).toMatchObject({ id: 'left', skills: [] });
  });
});
