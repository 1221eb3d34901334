import { describe, expect, it } from 'vitest';
import {
  checkedBy,
  finishedBefore,
  guardedBy,
  holdsGuarding,
  orderIndex,
  waitingOn,
} from '#domain/progress/orderIndex.ts';
import type { Work } from '#domain/tasks/work.ts';
import { comesAfter, siteWork, task } from './site.ts';

const hold = { measures: [], lapsesOn: [], redo: [] };

// Build, check, a small job, the move; then more building, another check, another move.
const work: Work = {
  ...siteWork,
  tasks: [
    task({ id: 'build-1', number: 1 }),
    task({ id: 'check-1', number: 2, hold }),
    task({ id: 'ready-1', number: 3 }),
    task({ id: 'move-1', number: 4, keepOff: true }),
    task({ id: 'build-2', number: 5 }),
    task({ id: 'check-2', number: 6, hold }),
    task({ id: 'move-2', number: 7, keepOff: true }),
    task({ id: 'lights', number: 8 }),
  ],
  links: [
    ...comesAfter('check-1', 'build-1'),
    ...comesAfter('ready-1', 'check-1'),
    ...comesAfter('move-1', 'ready-1'),
    ...comesAfter('build-2', 'move-1'),
    ...comesAfter('check-2', 'build-2', 'check-1'),
    ...comesAfter('move-2', 'check-2'),
    { from: 'move-1', to: 'lights', counts: 'start', wait: 0 },
    ...comesAfter('build-1', 'no-such-task'),
  ],
};

describe('an indexed order of work', () => {
  it('is made once for each order of work, without links to tasks that do not exist', () => {
    expect(orderIndex(work)).toBe(orderIndex(work));
    expect(orderIndex(work).before.get('build-1')).toBeUndefined();
  });
});

describe('a hold', () => {
  it('guards what comes after it, up to the next keep-off task and short of the next hold', () => {
    expect([...guardedBy(work, 'check-1')].toSorted()).toEqual(['move-1', 'ready-1']);
    expect([...guardedBy(work, 'check-2')]).toEqual(['move-2']);
  });

  it('is known to the tasks it guards', () => {
    expect(holdsGuarding(work, 'move-1')).toEqual(['check-1']);
    expect(holdsGuarding(work, 'build-2')).toEqual([]);
  });

  it('looks at what comes before it, back to the holds before', () => {
    expect([...checkedBy(work, 'check-1')]).toEqual(['build-1']);
    expect([...checkedBy(work, 'check-2')].toSorted()).toEqual(['build-2', 'move-1', 'ready-1']);
  });
});

describe('what waits on a task', () => {
  it('are those that come after its finish, directly or through others', () => {
    expect([...waitingOn(work, 'build-2')].toSorted()).toEqual(['check-2', 'move-2']);
    expect(waitingOn(work, 'move-1').has('lights')).toBe(false);
  });

  it('is seen from the other end as what must be finished before', () => {
    expect([...finishedBefore(work, 'move-1')].toSorted()).toEqual([
      'build-1',
      'check-1',
      'ready-1',
    ]);
    expect([...finishedBefore(work, 'lights')]).toEqual([]);
  });
});
