import type { Plan } from '../../schedule/plan.ts';
import type { Work } from '../../tasks/work.ts';
import type { CrewState } from '../crewState.ts';
import { minutesAfter } from '../instants.ts';
import { crewStanding, freshCrew } from '../people.ts';
import { freshTask, standingOf, wasTold } from '../standing.ts';
import type { BuildState, LoadState, TaskState } from '../state.ts';
import { freshLoad, loadStanding } from '../stores.ts';
import type { KnownEntry } from '../upcast.ts';

type Of<Kind extends KnownEntry['kind']> = Extract<KnownEntry, { kind: Kind }>;

export function foldOpening(state: BuildState, entry: Of<'build-opened'>): BuildState {
  const { work, ...order } = entry.body;
  return withWork({ ...state, ...order }, work, null, entry.number);
}

/** Another bridge and with it another order of work: nothing was told of the one before. */
export function foldBridge(state: BuildState, entry: Of<'bridge-chosen'>): BuildState {
  const { ground, bridge, work } = entry.body;
  const without = { ...state, ground, bridge, clearances: {}, planAcceptedAt: null };
  return withWork(without, work, null, entry.number);
}

export function foldPlan(state: BuildState, entry: Of<'plan-accepted'>): BuildState {
  const { work, plan } = entry.body;
  const planCount = state.planCount + 1;
  const counted = { ...state, planCount, planAcceptedAt: entry.happenedAt };
  return withWork(counted, work, plan, entry.number);
}

/** Puts an order of work and a plan in force. What was told of tasks, crews and loads stays. */
function withWork(state: BuildState, work: Work, plan: Plan | null, number: number): BuildState {
  return {
    ...state,
    work,
    plan,
    workNumber: number,
    tasks: tasksOf(state, work, plan),
    crews: crewsOf(state, work, number),
    loads: loadsOf(state, work, number),
  };
}

function tasksOf(state: BuildState, work: Work, plan: Plan | null): BuildState['tasks'] {
  const tasks: Record<string, TaskState> = {};
  for (const task of work.tasks) {
    const before = state.tasks[task.id];
    const sameKind = before && (before.hold === 'none') === !task.hold;
    if (before && wasTold(before)) {
      const settled = before.status === 'done' && sameKind;
      tasks[task.id] = settled ? before : standingOf(before, task, plan);
    } else tasks[task.id] = before && sameKind ? before : freshTask(task);
  }
  for (const [id, before] of Object.entries(state.tasks))
    if (!tasks[id] && wasTold(before)) tasks[id] = before;
  return tasks;
}

function crewsOf(state: BuildState, work: Work, entry: number): BuildState['crews'] {
  const crews: Record<string, CrewState> = {};
  for (const { id, people } of work.crews) {
    const before = state.crews[id];
    if (!before) crews[id] = freshCrew(people, entry);
    // A plan that took the told strength in leaves it as it was told.
    else if (people === before.planned.people || people === before.fit) crews[id] = before;
    else crews[id] = crewStanding({ ...before, planned: { people, entry } });
  }
  for (const [id, before] of Object.entries(state.crews))
    if (!crews[id] && before.tells.length > 0) crews[id] = before;
  return crews;
}

function loadsOf(state: BuildState, work: Work, entry: number): BuildState['loads'] {
  const loads: Record<string, LoadState> = {};
  for (const { id, arrives } of work.loads) {
    const at = minutesAfter(state.start, arrives);
    const before = state.loads[id];
    if (!before) loads[id] = freshLoad(at, entry);
    // A plan that took the told time in leaves it as it was told.
    else if (at === before.planned.at || at === before.at) loads[id] = before;
    else loads[id] = loadStanding({ ...before, planned: { at, entry } });
  }
  return loads;
}
