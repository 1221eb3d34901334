import { expect, it } from 'vitest';
import { withNumbers } from '#client/parts/taskNumbers.ts';
import { smallBuild } from '../support/smallBuild.ts';

it('says a task by its number, and leaves other brackets alone', () => {
  const said = withNumbers(
    smallBuild.work,
    'Bay 9, left side (bay-9-left) takes at least 6 people (of one crew).',
  );
  expect(said).toBe('Bay 9, left side (57) takes at least 6 people (of one crew).');
});
