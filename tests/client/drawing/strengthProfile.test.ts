import { describe, expect, it } from 'vitest';
import { strengthProfile } from '#client/drawing/strengthProfile.ts';
import type { Crew } from '#domain/tasks/work.ts';
import { smallBuild } from '../support/smallBuild.ts';

const [left, right] = smallBuild.work.crews;

/** People and moments of the left crew, seven strong, and of the one beside it. */
function profiles(change: Partial<Crew>) {
  const work = { ...smallBuild.work, crews: [{ ...left!, ...change }, right!] };
  return [0, 1].map((row) =>
    strengthProfile(work, row, 0, 200).map(({ from, to, people, rest }) => {
      return rest ? `rest ${from}-${to}` : `${people} ${from}-${to}`;
    }),
  );
}

describe('How many of a crew there are over time', () => {
  it('is its people all the time where nothing is said', () => {
    expect(profiles({})).toEqual([['7 0-200'], ['7 0-200']]);
  });

  it('is nobody outside its hours and in rests of the whole crew', () => {
    const [own] = profiles({ from: 20, to: 150, rests: [{ from: 60, to: 90 }] });
    expect(own).toEqual(['0 0-20', '7 20-60', 'rest 60-90', '7 90-150', '0 150-200']);
  });

  it('is fewer by those who rest in turn and those lent, who count where they are', () => {
    const rests = [
      { from: 30, to: 40, people: 3 },
      { from: 40, to: 50, people: 3 },
    ];
    const lent = [{ crew: 'right', people: 2, from: 100, to: 120 }];
    expect(profiles({ rests, lent })).toEqual([
      ['7 0-30', '4 30-50', '7 50-100', '5 100-120', '7 120-200'],
      ['7 0-100', '9 100-120', '7 120-200'],
    ]);
  });

  it('follows later strength up to the end of the picture', () => {
    const strength = [
      { from: 120, people: 5 },
      { from: 300, people: 9 },
    ];
    expect(profiles({ strength })[0]).toEqual(['7 0-120', '5 120-200']);
  });
});
