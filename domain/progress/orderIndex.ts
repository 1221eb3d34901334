import type { Task } from '../tasks/task.ts';
import type { Link, Work } from '../tasks/work.ts';

/** An order of work, indexed for the many look-ups of rules and views. */
export type OrderIndex = {
  readonly task: ReadonlyMap<string, Task>;
  /** Links that lead to a task. */
  readonly before: ReadonlyMap<string, readonly Link[]>;
  /** Links that lead from a task. */
  readonly after: ReadonlyMap<string, readonly Link[]>;
};

// States share their work by reference, so the index is made once for each order of work and not for each question.
const indexes = new WeakMap<Work, OrderIndex>();

/** The index of an order of work. Links to tasks that do not exist are left out. */
export function orderIndex(work: Work): OrderIndex {
  const known = indexes.get(work);
  if (known) return known;
  const task = new Map(work.tasks.map((each) => [each.id, each]));
  const before = new Map<string, Link[]>();
  const after = new Map<string, Link[]>();
  for (const link of work.links) {
    if (!task.has(link.from) || !task.has(link.to)) continue;
    push(before, link.to, link);
    push(after, link.from, link);
  }
  const index = { task, before, after };
  indexes.set(work, index);
  return index;
}

function push(lists: Map<string, Link[]>, key: string, link: Link): void {
  const list = lists.get(key);
  if (list) list.push(link);
  else lists.set(key, [link]);
}

/** Ids of every task that must be finished before `task`, through links that count from a finish. */
export function finishedBefore(work: Work, task: string): Set<string> {
  const { before } = orderIndex(work);
  return walk(task, (id) =>
    (before.get(id) ?? []).filter(({ counts }) => counts === 'finish').map(({ from }) => from),
  );
}

/** Ids of every task that waits for the finish of `task`, directly or through others. */
export function waitingOn(work: Work, task: string): Set<string> {
  const { after } = orderIndex(work);
  return walk(task, (id) =>
    (after.get(id) ?? []).filter(({ counts }) => counts === 'finish').map(({ to }) => to),
  );
}

/**
 * The tasks that a hold guards: all that come after it, up to and with the next keep-off task on each way, and short
 * of the next hold. So a hold before a move still guards it when a small job stands between, and its pass is spent
 * once the move is done; what comes after the next hold is that hold's to guard.
 */
export function guardedBy(work: Work, hold: string): Set<string> {
  const { task, after } = orderIndex(work);
  return walk(hold, (id) => {
    if (id !== hold && task.get(id)?.keepOff) return [];
    return (after.get(id) ?? []).map(({ to }) => to).filter((to) => !task.get(to)?.hold);
  });
}

const guards = new WeakMap<Work, ReadonlyMap<string, readonly string[]>>();

/** The holds that guard a task, in the order of work. */
export function holdsGuarding(work: Work, task: string): readonly string[] {
  let known = guards.get(work);
  if (!known) {
    const lists = new Map<string, string[]>();
    for (const { id, hold } of work.tasks) {
      if (!hold) continue;
      for (const guarded of guardedBy(work, id)) {
        const list = lists.get(guarded);
        if (list) list.push(id);
        else lists.set(guarded, [id]);
      }
    }
    known = lists;
    guards.set(work, known);
  }
  return known.get(task) ?? [];
}

/** The tasks that a hold looks at: all that come before it, back to the holds before. */
export function checkedBy(work: Work, hold: string): Set<string> {
  const { task, before } = orderIndex(work);
  return walk(hold, (id) =>
    (before.get(id) ?? []).map(({ from }) => from).filter((from) => !task.get(from)?.hold),
  );
}

function walk(start: string, next: (id: string) => readonly string[]): Set<string> {
  const seen = new Set<string>();
  const ahead = [start];
  for (let id = ahead.pop(); id !== undefined; id = ahead.pop()) {
    for (const each of next(id)) {
      if (seen.has(each) || each === start) continue;
      seen.add(each);
      ahead.push(each);
    }
  }
  return seen;
}
