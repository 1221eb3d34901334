import type { Work } from '../tasks/work.ts';
import type { Reason } from './plan.ts';

/** Why a task cannot start earlier, as the end of a sentence that begins with the task ("waits for Bay 8, left side"). */
export function reasonSentence(work: Work, reason: Reason): string {
  const task = work.tasks.find(({ id }) => id === reason.task);
  const before = task?.name ?? reason.task ?? '';
  const of = nameOf(work, reason);
  switch (reason.kind) {
    case 'start':
      return 'starts with the build';
    case 'link':
      return `waits for ${before}`;
    case 'crew':
      return `people of ${of} come free from ${before}`;
    case 'crossing':
      return `people of ${of} cross over from ${before}`;
    case 'zone':
      return task?.keepOff
        ? `${before} keeps others off ${of}`
        : `waits for ${before} to leave ${of}`;
    case 'equipment':
      return `${of} comes free from ${before}`;
    case 'load':
      return `waits for ${of} to come in`;
    case 'window':
      return `waits for ${of} to come on`;
    case 'rest':
      return of === '' ? 'starts after a rest' : `starts after the rest of ${of}`;
    case 'light':
      return 'waits for light';
    case 'fixed':
      return 'starts when the leader has fixed it';
    case 'now':
      return 'can start now';
    case 'past':
      return 'has begun';
  }
}

function nameOf(work: Work, { kind, of }: Reason): string {
  const { crews, zones, loads, equipment = [] } = work;
  const things = { zone: zones, load: loads, equipment }[kind as string] ?? crews;
  return things.find(({ id }) => id === of)?.name ?? of ?? '';
}
