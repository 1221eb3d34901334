import type { Link } from '../../tasks/work.ts';
import { minutesBetween } from '../instants.ts';
import { finishedBefore, holdsGuarding, orderIndex } from '../orderIndex.ts';
import type { BuildState } from '../state.ts';
import { holdWords, minutesInWords, statusWords, taskLabel } from '../words.ts';

/** One thing that must be so before a task starts. */
export type Before = {
  readonly kind: 'order' | 'hold' | 'wait';
  /** The task or hold concerned. */
  readonly of: string;
  readonly met: boolean;
  /** What is so, or what to do. */
  readonly sentence: string;
};

/**
 * What the order of work asks before a task: the tasks it comes after, the holds that guard it. Waits are looked at
 * when `at` says for which moment; a negative wait lets the task start while the one before is still at work.
 */
export function beforeTask(state: BuildState, task: string, at?: string): Before[] {
  const links = orderIndex(state.work).before.get(task) ?? [];
  const direct = links.map((link) => linkMet(state, link, at));
  const listed = new Set(links.map(({ from }) => from));
  const guarding = holdsGuarding(state.work, task).filter((hold) => !listed.has(hold));
  return [...direct, ...guarding.map((hold) => finished(state, hold))];
}

/**
 * As `beforeTask`, and nothing before those may be open either, however far back: for a keep-off task and a hold,
 * where people's lives hang on all that went before. Here a negative wait gives no leave to start early.
 * Named are the nearest that are open: what lies behind an open task comes with it, unless what follows was told done
 * all the same, or is itself a hold that cannot be passed yet.
 */
export function everythingBefore(state: BuildState, task: string, at?: string): Before[] {
  const { before, after } = orderIndex(state.work);
  const links = before.get(task) ?? [];
  const direct = links.map((link) => {
    const early = link.counts === 'finish' && link.wait < 0;
    return linkMet(state, early ? { ...link, wait: 0 } : link, at);
  });
  const listed = new Set(links.map(({ from }) => from));
  const earlier = finishedBefore(state.work, task);
  const isNearest = (id: string) =>
    (after.get(id) ?? []).some(({ to, counts }) => {
      if (counts !== 'finish' || !earlier.has(to)) return false;
      return isDone(state, to) || state.tasks[to]?.hold !== 'none';
    });
  const guarding = holdsGuarding(state.work, task);
  const open = [...new Set([...guarding, ...[...earlier].filter(isNearest)])]
    .filter((id) => !listed.has(id) && !isDone(state, id))
    .map((id) => finished(state, id));
  return [...direct, ...open];
}

function isDone(state: BuildState, id: string): boolean {
  return state.tasks[id]?.status === 'done';
}

function linkMet(state: BuildState, link: Link, at: string | undefined): Before {
  const { from, counts, wait } = link;
  if (counts === 'finish' && wait >= 0) {
    const done = finished(state, from);
    return done.met ? waited(state, done, state.tasks[from]?.finishedAt, link, at) : done;
  }
  const before = state.tasks[from];
  const label = taskLabel(state, from);
  const met = before !== undefined && before.status !== 'to-come';
  const sentence = met ? `${label} has started.` : `Start ${label} first.`;
  const begun: Before = { kind: 'order', of: from, met, sentence };
  const since = counts === 'start' ? before?.startedAt : null;
  return met ? waited(state, begun, since, link, at) : begun;
}

function finished(state: BuildState, id: string): Before {
  const before = state.tasks[id];
  const label = taskLabel(state, id);
  const met = before?.status === 'done';
  if (before && before.hold !== 'none') {
    const sentence = met
      ? `${label} is passed.`
      : `${label} is ${holdWords[before.hold]}: have it inspected first.`;
    return { kind: 'hold', of: id, met, sentence };
  }
  const status = statusWords[before?.status ?? 'to-come'];
  const sentence = met ? `${label} is done.` : `Finish ${label} first: it is ${status}.`;
  return { kind: 'order', of: id, met, sentence };
}

function waited(
  state: BuildState,
  begun: Before,
  since: string | null | undefined,
  { from, wait, counts }: Link,
  at: string | undefined,
): Before {
  if (at === undefined || !since || wait <= 0) return begun;
  const left = wait - minutesBetween(since, at);
  if (left <= 0) return begun;
  const after = counts === 'start' ? 'the start of ' : '';
  const sentence = `Wait ${minutesInWords(left)} more after ${after}${taskLabel(state, from)}.`;
  return { kind: 'wait', of: from, met: false, sentence };
}
