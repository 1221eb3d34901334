import { describe, expect, it } from 'vitest';
import { callSigns, crewsCalled } from '#client/screens/log/callSigns.ts';
import { smallBuild } from '../support/smallBuild.ts';

describe('what a crew is called by', () => {
  it('is the fewest letters that mean no other crew, and means that crew', () => {
    const signs = callSigns(smallBuild.work);
    expect(Object.fromEntries(signs)).toEqual({ left: 'l', right: 'ri', rollers: 'ro' });
    for (const [crew, sign] of signs) expect(crewsCalled(sign, smallBuild.work)[0]?.id).toBe(crew);
  });

  it('is any word of its name too, after the crews whose name begins so', () => {
    expect(crewsCalled('girder', smallBuild.work).map(({ id }) => id)).toEqual(['left', 'right']);
    expect(crewsCalled('j', smallBuild.work).map(({ id }) => id)).toEqual(['rollers']);
  });

  it('is never a number', () => {
    expect(crewsCalled('57', smallBuild.work)).toEqual([]);
  });
});
