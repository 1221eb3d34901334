import { openingTasks } from '../../schedule/opening.ts';
import type { BuildState } from '../state.ts';

/** Whether traffic may cross, and since when (ISO 8601 UTC). */
export type Opened = { readonly open: boolean; readonly since: string | null };

/** Open once all tasks of the opening are done: the one that opens, where there is none the holds, else all. */
export function openedOf({ work, tasks }: BuildState): Opened {
  const finishes = [...openingTasks(work)].map((id) =>
    tasks[id]?.status === 'done' ? tasks[id].finishedAt : null,
  );
  const known = finishes.filter((time) => time !== null);
  if (known.length === 0 || known.length < finishes.length) return { open: false, since: null };
  const since = known.reduce((a, b) => (Date.parse(b) > Date.parse(a) ? b : a));
  return { open: true, since };
}
