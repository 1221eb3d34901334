import { orderIndex } from '../orderIndex.ts';
import { isOfEarlierAttempt } from '../standing.ts';
import type { BuildState, TaskState, TaskTell } from '../state.ts';
import type { KnownEntry } from '../upcast.ts';
import { taskLabel } from '../words.ts';
import { changeTask, voidClearances } from './changeTask.ts';
import { bringBack, flagTasks, lapseHolds } from './consequences.ts';
import { addEvent } from './events.ts';
import { haltedTell } from './foldHalt.ts';

type Of<Kind extends KnownEntry['kind']> = Extract<KnownEntry, { kind: Kind }>;

type WorkTold = Of<
  'task-started' | 'task-finished' | 'task-stopped' | 'task-resumed' | 'task-part-done'
>;

const tellKinds = {
  'task-started': 'started',
  'task-finished': 'finished',
  'task-stopped': 'stopped',
  'task-resumed': 'resumed',
  'task-part-done': 'part',
} as const satisfies Record<WorkTold['kind'], TaskTell['kind']>;

/** Work told at a task, with the holds that lapse by it. */
export function foldWork(state: BuildState, entry: WorkTold): BuildState {
  const { task: id, crew } = entry.body;
  const told: TaskTell = {
    ...tellBy(entry),
    kind: tellKinds[entry.kind],
    crew,
    ...(entry.kind === 'task-stopped' ? { why: entry.body.why } : {}),
    ...(entry.kind === 'task-part-done' ? { part: entry.body.part } : {}),
  };
  const { halt } = state;
  // A phone that comes back after the halt was called tells of work that the halt has stopped since.
  const before = halt && Date.parse(entry.happenedAt) < Date.parse(halt.since);
  const tells = before ? [told, haltedTell(halt)] : [told];
  const worked = changeTask(state, id, (task) => {
    if (isOfEarlierAttempt(task, entry.happenedAt)) return withLateTell(task, told);
    return { ...task, tells: [...task.tells, ...tells] };
  });
  const task = orderIndex(state.work).task.get(id);
  const goesOn = entry.kind === 'task-started' || entry.kind === 'task-resumed';
  const cleared = goesOn && task ? voidClearances(worked, task) : worked;
  return lapseHolds(cleared, entry, `after ${taskLabel(state, id)}`);
}

/** A tell about an attempt that was found wrong since: kept with that attempt, and no word on the present one. */
function withLateTell(task: TaskState, told: TaskTell): TaskState {
  const last = task.earlier.at(-1)!;
  const attempt = { ...last, tells: [...last.tells, told] };
  return { ...task, earlier: [...task.earlier.slice(0, -1), attempt] };
}

/** A granted start of a keep-off task, for all its crews. */
export function foldKeepOffStart(state: BuildState, entry: Of<'keep-off-started'>): BuildState {
  const { task: id } = entry.body;
  const started = changeTask(state, id, (task) => {
    const kind = task.status === 'stopped' ? 'resumed' : 'started';
    return { ...task, tells: [...task.tells, { ...tellBy(entry), kind, crew: '' }] };
  });
  return lapseHolds(started, entry, `after ${taskLabel(state, id)}`);
}

/** The leader's decision between two tells. */
export function foldSettlement(state: BuildState, entry: Of<'task-settled'>): BuildState {
  const { task: id, status } = entry.body;
  const told: TaskTell = { ...tellBy(entry), kind: 'settled', crew: '', settled: status };
  const settled = changeTask(state, id, (task) => ({ ...task, tells: [...task.tells, told] }));
  return lapseHolds(settled, entry, `after ${taskLabel(state, id)}`);
}

/** Finished work found wrong. */
export function foldReopening(state: BuildState, entry: Of<'task-reopened'>): BuildState {
  const { task, why } = entry.body;
  const reason = `${taskLabel(state, task)} came back: ${why}`;
  const causes = (entry.consequence?.redo ?? []).map((each) => each.task);
  const back = flagTasks(bringBack(state, entry, reason), entry, causes);
  const lapsed = lapseHolds(back, entry, reason);
  return addEvent(lapsed, entry, { kind: 'reopened', sentence: `${reason}.`, task });
}

function tellBy(entry: KnownEntry): Pick<TaskTell, 'entry' | 'by' | 'saidBy' | 'at'> {
  const { number, by, saidBy, happenedAt } = entry;
  return { entry: number, by, ...(saidBy ? { saidBy } : {}), at: happenedAt };
}
