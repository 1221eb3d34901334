import { expect, it } from 'vitest';
import { crewStrength } from '#client/parts/crewStrength.ts';
import { smallBuild } from '../support/smallBuild.ts';

it('sets the fit of a crew against what it was to have, also once a plan was made for the fit ones alone', () => {
  const crew = smallBuild.work.crews.find(({ id }) => id === 'left')!;
  const crews = { ...smallBuild.crews, left: { ...smallBuild.crews.left!, fit: 5 } };
  expect(crewStrength({ crews }, { ...crew, people: 5 })).toEqual({ fit: 5, planned: 7 });
  expect(crewStrength({ crews: {} }, crew)).toEqual({ fit: 7, planned: 7 });
});
