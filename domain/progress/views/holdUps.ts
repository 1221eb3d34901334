import { minutesBetween } from '../instants.ts';
import { plannedTask } from '../plannedCrews.ts';
import type { BuildState } from '../state.ts';
import { taskLabel } from '../words.ts';
import { holdsOf } from './holds.ts';

/** One thing that holds the build up, in a sentence; `task` or `load` where it is about one. */
export type HoldUp = { readonly sentence: string; readonly task?: string; readonly load?: string };

/**
 * What holds the build up, seen from now (ISO 8601 UTC), the gravest first: a halt, failed and lapsed holds, stopped
 * work, stores that are late, parts that are short for work not done, work that has taken longer than its slow
 * estimate.
 */
export function holdUps(state: BuildState, now: string): HoldUp[] {
  const { halt } = state;
  const halted = halt
    ? [
        {
          sentence: `A halt is on since ${minutesSince(halt.since, now)} min: ${halt.why || 'no reason given'}.`,
        },
      ]
    : [];
  return [
    ...halted,
    ...heldPoints(state),
    ...stoppedWork(state),
    ...lateLoads(state, now),
    ...shortParts(state),
    ...overdueWork(state, now),
  ];
}

function minutesSince(time: string, now: string): number {
  return Math.max(0, Math.floor(minutesBetween(time, now)));
}

function heldPoints(state: BuildState): HoldUp[] {
  return holdsOf(state)
    .filter(({ status }) => status === 'failed' || status === 'lapsed')
    .map(({ task, status, why }) => ({
      sentence: `${taskLabel(state, task)} ${status === 'failed' ? 'failed' : 'has lapsed'}${why ? `: ${why}` : ''}.`,
      task,
    }));
}

function stoppedWork(state: BuildState): HoldUp[] {
  return state.work.tasks.flatMap(({ id }): HoldUp[] => {
    const standing = state.tasks[id];
    if (standing?.disputed)
      return [{ sentence: `${taskLabel(state, id)}: one says done, another stopped.`, task: id }];
    if (standing?.status !== 'stopped') return [];
    const why = standing.why ? `: ${standing.why}` : '';
    return [{ sentence: `${taskLabel(state, id)} is stopped${why}.`, task: id }];
  });
}

function lateLoads(state: BuildState, now: string): HoldUp[] {
  return state.work.loads.flatMap(({ id, name }): HoldUp[] => {
    const load = state.loads[id];
    if (!load || load.status === 'in') return [];
    const late = Math.round(minutesBetween(load.planned.at, load.at));
    const overdue = minutesSince(load.at, now);
    if (late <= 0 && overdue === 0) return [];
    const why = load.why ? ` (${load.why})` : '';
    const by = late > 0 ? ` is ${late} min late${why}` : ' is not in';
    const due = overdue > 0 ? `, expected ${overdue} min ago` : '';
    return [{ sentence: `${name}${by}${due}.`, load: id }];
  });
}

function shortParts(state: BuildState): HoldUp[] {
  return state.events
    .filter(({ kind, task }) => kind === 'short' && (!task || state.tasks[task]?.status !== 'done'))
    .map(({ sentence, task }) => ({ sentence, ...(task ? { task } : {}) }));
}

function overdueWork(state: BuildState, now: string): HoldUp[] {
  return state.work.tasks.flatMap(({ id, minutes }): HoldUp[] => {
    const standing = state.tasks[id];
    if (standing?.status !== 'at-work' || !standing.startedAt) return [];
    const slow = minutes.slow * (plannedTask(state.plan, id)?.stretch ?? 1);
    const taken = minutesSince(standing.startedAt, now);
    if (taken <= slow) return [];
    const sentence = `${taskLabel(state, id)} has taken ${taken} min, slow would be ${Math.round(slow)}.`;
    return [{ sentence, task: id }];
  });
}
