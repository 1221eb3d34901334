import { expect, it } from 'vitest';
import type { Reason } from '#domain/schedule/plan.ts';
import { reasonSentence } from '#domain/schedule/reasonSentence.ts';
import { smallWork } from '#tests/support/smallWork.ts';

const work = smallWork(
  [
    { id: 'b8l', name: 'Bay 8, left side', minutes: 1, zones: ['deck'] },
    { id: 'move', name: 'Move 3', minutes: 1, zones: ['deck'], keepOff: true },
  ],
  {
    crews: [{ id: 'left', name: 'Left girder', people: 7 }],
    zones: [{ id: 'deck', name: 'On the bridge' }],
    loads: [{ id: 'l3', name: 'Truck 3', arrives: 5 }],
  },
);

it.each<[Reason, string]>([
  [{ kind: 'start' }, 'starts with the build'],
  [{ kind: 'link', task: 'b8l' }, 'waits for Bay 8, left side'],
  [
    { kind: 'crew', task: 'b8l', of: 'left' },
    'people of Left girder come free from Bay 8, left side',
  ],
  [{ kind: 'zone', task: 'move', of: 'deck' }, 'Move 3 keeps others off On the bridge'],
  [{ kind: 'zone', task: 'b8l', of: 'deck' }, 'waits for Bay 8, left side to leave On the bridge'],
  [{ kind: 'load', of: 'l3' }, 'waits for Truck 3 to come in'],
  [{ kind: 'window', of: 'left' }, 'waits for Left girder to come on'],
  [{ kind: 'now' }, 'can start now'],
  [{ kind: 'past' }, 'has begun'],
  [{ kind: 'link', task: 'unknown' }, 'waits for unknown'],
])('a reason %j reads "%s"', (reason, sentence) => {
  expect(reasonSentence(work, reason)).toBe(sentence);
});
