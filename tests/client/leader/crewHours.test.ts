import { describe, expect, it } from 'vitest';
import {
  crewBefore,
  lastMinute,
  withHours,
  workTried,
} from '#client/screens/leader/hours/crewHours.ts';
import { shortOf } from '#client/screens/leader/hours/shortOf.ts';
import type { Change } from '#domain/tasks/change.ts';
import { smallBuild } from '../support/smallBuild.ts';

const [left, right] = smallBuild.work.crews;
const rests: Change = { kind: 'crew-hours', crew: 'left', rests: [{ from: 60, to: 90 }] };
const name: Change = {
  kind: 'crew-name',
  crew: 'left',
  name: 'Left',
  chief: null,
  attached: false,
};

describe('A crew before its hours change', () => {
  it('has every other change, and none of another crew', () => {
    const before = crewBefore(smallBuild, [rests, name], 'left');
    expect(before).toMatchObject({ name: 'Left', people: left!.people });
    expect(before).not.toHaveProperty('rests');
    expect(withHours(before!, [rests, name])).toMatchObject({ name: 'Left', rests: rests.rests });
    expect(withHours(right!, [rests, name])).toEqual(right);
  });

  it('may be new among the changes', () => {
    const night = { ...left!, id: 'night' };
    expect(crewBefore(smallBuild, [{ kind: 'crew', crew: night }], 'night')).toEqual(night);
    expect(crewBefore(smallBuild, [], 'night')).toBeNull();
  });

  it('has the people of the plan, and no change of strength that a count has overtaken', () => {
    const strength = [
      { from: 30, people: 6 },
      { from: 90, people: 5 },
    ];
    const work = { ...smallBuild.work, crews: [{ ...left!, strength }] };
    // The build starts 10:30 in UTC: counted 60 minutes later.
    const told = { ...smallBuild.crews.left!, fit: 4, toldAt: '2026-11-25T11:30:00Z' };
    const state = { ...smallBuild, work, crews: { left: told } };
    expect(crewBefore(state, [], 'left')).toEqual({ ...left!, strength: [strength[1]] });
  });
});

describe('The order of work with the changes', () => {
  const lends = (crew: string, people: number): Change => {
    return { kind: 'crew-hours', crew: 'left', lent: [{ crew, people, from: 120 }] };
  };

  it('has them all where they fit', () => {
    const changes = [name, rests, lends('right', 2)];
    const [first] = workTried(smallBuild, changes).crews;
    expect(first).toMatchObject({ name: 'Left', lent: [{ people: 2 }] });
  });

  it('has what they say of crews where more would be lent than are fit, to show it', () => {
    const weak = { ...smallBuild.crews, left: { ...smallBuild.crews.left!, fit: 1 } };
    const night = { ...left!, id: 'night' };
    const changes: Change[] = [{ kind: 'crew', crew: night }, lends('night', 2)];
    const work = workTried({ ...smallBuild, crews: weak }, changes);
    expect(work.crews.at(-1)).toEqual(night);
    expect(shortOf(work)).toMatchObject([{ crew: { id: 'left' }, at: 120, missing: 1 }]);
  });

  it('forgets who would be lent to a crew that is no longer among them', () => {
    expect(shortOf(workTried(smallBuild, [lends('night', 2)]))).toEqual([]);
  });
});

describe('Crews of which more would be lent or resting than there are', () => {
  const tried = (...crews: (typeof smallBuild.work.crews)[number][]) =>
    shortOf({ ...smallBuild.work, crews }).map(({ crew, at, missing }) => [crew.id, at, missing]);

  it('are named with the first moment and how many are missing', () => {
    const lent = (people: number) => [{ crew: 'right', people, from: 120, to: 150 }];
    const some = (people: number) => [{ from: 130, to: 140, people }];
    expect(tried({ ...left!, lent: lent(7) }, right!)).toEqual([]);
    expect(tried({ ...left!, lent: lent(9) }, right!)).toEqual([['left', 120, 2]]);
    expect(tried({ ...left!, lent: lent(4), rests: some(4) }, right!)).toEqual([['left', 130, 1]]);
  });
});

describe('The last minute that is drawn', () => {
  it('is that of the opening or of the last change, with a little room after it', () => {
    const work = (crew: Partial<NonNullable<typeof left>>) => ({
      ...smallBuild.work,
      crews: [{ ...left!, ...crew }],
    });
    expect(lastMinute(work({}), 0)).toBeGreaterThanOrEqual(60);
    expect(lastMinute(work({}), 300)).toBeGreaterThan(300);
    for (const crew of [
      { to: 500 },
      { rests: [{ from: 400, to: 500 }] },
      { lent: [{ crew: 'right', people: 1, from: 500 }] },
      { strength: [{ from: 500, people: 1 }] },
    ])
      expect(lastMinute(work(crew), 300)).toBeGreaterThan(500);
  });
});
