import type { Task } from '../../tasks/task.ts';
import { minutesBetween } from '../instants.ts';
import { orderIndex } from '../orderIndex.ts';
import { expectedCrews, peopleFrom } from '../plannedCrews.ts';
import { beforeTask, everythingBefore } from '../rules/before.ts';
import { isOnSite } from '../rules/halt.ts';
import { isAtWork } from '../standing.ts';
import type { BuildState } from '../state.ts';
import { crewLabel, inWords, taskLabel, zoneLabel } from '../words.ts';

/** One thing that a task waits for. `of` is the task, hold, load or crew concerned; empty for a halt. */
export type WaitsFor = {
  readonly kind: 'task' | 'hold' | 'load' | 'keep-off' | 'halt' | 'wait' | 'crew';
  readonly of: string;
  readonly sentence: string;
};

export type Readiness = { readonly ready: boolean; readonly waitsFor: readonly WaitsFor[] };

/**
 * Whether a task could start or go on now (ISO 8601 UTC), and what it waits for if not: halt, tasks and holds before
 * it, waits, stores, a keep-off task in its zones, and people where it waits for nothing else. Depends on the clock, so it is never stored. A keep-off
 * task that is ready still has to be asked for. A task at work or done waits for nothing and is not ready.
 */
export function readiness(state: BuildState, taskId: string, now: string): Readiness {
  const task = orderIndex(state.work).task.get(taskId);
  const standing = state.tasks[taskId];
  if (!task || !standing || isAtWork(standing) || standing.status === 'done')
    return { ready: false, waitsFor: [] };
  const others = [
    ...haltWait(state),
    ...orderWaits(state, task, now),
    ...loadWaits(state, task, now),
    ...zoneWaits(state, task),
  ];
  // While it waits for anything else its people are rightly busy elsewhere.
  const waitsFor = others.length > 0 ? others : crewWaits(state, task, now);
  return { ready: waitsFor.length === 0, waitsFor };
}

function haltWait({ halt }: BuildState): WaitsFor[] {
  return halt ? [{ kind: 'halt', of: '', sentence: 'A halt is on.' }] : [];
}

function orderWaits(state: BuildState, task: Task, now: string): WaitsFor[] {
  const before = task.keepOff || task.hold ? everythingBefore : beforeTask;
  return before(state, task.id, now)
    .filter(({ met }) => !met)
    .map(({ kind, of, sentence }) => ({ kind: kind === 'order' ? 'task' : kind, of, sentence }));
}

function loadWaits(state: BuildState, task: Task, now: string): WaitsFor[] {
  return task.loads.flatMap((id): WaitsFor[] => {
    const load = state.loads[id];
    if (!load || load.status === 'in') return [];
    const name = state.work.loads.find((each) => each.id === id)?.name ?? id;
    const minutes = Math.ceil(minutesBetween(now, load.at));
    const when = minutes > 0 ? `expected in ${minutes} min` : 'expected by now, not told in';
    const sentence = `${name} is not here: ${when}${load.why ? ` (${load.why})` : ''}.`;
    return [{ kind: 'load', of: id, sentence }];
  });
}

function zoneWaits(state: BuildState, task: Task): WaitsFor[] {
  return state.work.tasks.flatMap(({ id, keepOff, zones }): WaitsFor[] => {
    const other = state.tasks[id];
    if (id === task.id || !other || !isAtWork(other)) return [];
    if (!keepOff && !task.keepOff) return [];
    const shared = zones.filter((zone) => task.zones.includes(zone));
    if (shared.length === 0) return [];
    const where = inWords(shared.map((zone) => zoneLabel(state, zone)));
    const what = keepOff ? 'closes' : 'is at work in';
    return [{ kind: 'keep-off', of: id, sentence: `${taskLabel(state, id)} ${what} ${where}.` }];
  });
}

/** Crews that are not there, or have fewer people free than the least that the task can do with. */
function crewWaits(state: BuildState, task: Task, now: string): WaitsFor[] {
  return expectedCrews(state.plan, task).named.flatMap((crew): WaitsFor[] => {
    const strength = state.crews[crew];
    if (!strength) return [];
    const name = crewLabel(state, crew);
    if (!isOnSite(state, crew, now))
      return [{ kind: 'crew', of: crew, sentence: `${name} is not on site now.` }];
    const need = task.needs.find(({ anyOf }) => anyOf.length === 0 || anyOf.includes(crew));
    const wanted = Math.min(need?.people.least ?? 0, peopleFrom(state.plan, task, crew));
    const free = strength.fit - busyPeople(state, crew);
    if (free >= wanted) return [];
    const sentence = `${name} has ${Math.max(0, free)} free, this takes at least ${wanted}.`;
    return [{ kind: 'crew', of: crew, sentence }];
  });
}

function busyPeople(state: BuildState, crew: string): number {
  return state.work.tasks.reduce((people, task) => {
    const share = state.tasks[task.id]?.shares.find((each) => each.crew === crew);
    return share?.status === 'at-work' ? people + peopleFrom(state.plan, task, crew) : people;
  }, 0);
}
