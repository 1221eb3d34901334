import type { PlannedTask } from '#domain/schedule/plan.ts';
import type { Task } from '#domain/tasks/task.ts';
import type { Work } from '#domain/tasks/work.ts';

type Spell = { readonly from: number; readonly to: number };

/** True where the task cannot be left half done: it keeps others off, or a hold point follows it at once. */
function isWhole(work: Work, task: Task): boolean {
  return (
    task.keepOff ||
    work.links.some(
      ({ from, to, counts, wait }) =>
        from === task.id &&
        counts === 'finish' &&
        wait <= 0 &&
        work.tasks.some(({ id, hold }) => id === to && hold !== undefined),
    )
  );
}

/** Rests of whole crews: where some of a crew rest, the others work on. */
function restsOf(work: Work, { crews }: PlannedTask): Spell[] {
  const atWork = crews.filter(({ people }) => people > 0).map(({ crew }) => crew);
  return work.crews
    .filter(({ id }) => atWork.includes(id))
    .flatMap(({ rests = [] }) => rests.filter((rest) => !rest.people).map(inSeconds));
}

function nightsOf(work: Work): Spell[] {
  return (work.dark?.spells ?? []).map(inSeconds);
}

/** Minutes to the nearest whole second, as all times of a plan are. */
function inSeconds({ from, to }: Spell): Spell {
  return { from: Math.round(from * 60) / 60, to: Math.round(to * 60) / 60 };
}

/**
 * When work of so many minutes by day is done that begins at `start`, gone through from one change to the next: it
 * stands in the rests of its crews and is slow in the dark. Written apart from the planner.
 */
export function doneAt(
  work: Work,
  task: Task,
  own: PlannedTask,
  start: number,
  minutes: number,
  started = false,
): number {
  const stands = isWhole(work, task) ? [] : restsOf(work, own);
  const slow = task.daylight && !started ? [] : nightsOf(work);
  const changes = [...stands, ...slow].flatMap(({ from, to }) => [from, to]);
  changes.sort((one, other) => one - other);
  let time = start;
  let left = minutes;
  for (const next of [...changes.filter((change) => change > start), Number.POSITIVE_INFINITY]) {
    const within = ({ from, to }: Spell) => from <= time && time < to;
    const rate = stands.some(within) ? 0 : slow.some(within) ? 1 / (work.dark?.factor ?? 1) : 1;
    if (left <= rate * (next - time) + 1e-9) return rate === 0 ? time : time + left / rate;
    left -= rate * (next - time);
    time = next;
  }
  return time;
}

/** What is wrong with when a task runs, by the rests of its crews, by the light and by what the leader has fixed. */
export function checkTimes(work: Work, task: Task, own: PlannedTask, now: number): string[] {
  const wrong: string[] = [];
  const { start, finish } = own;
  const touches = ({ from, to }: Spell) => start < to - 1e-9 && finish > from + 1e-9;
  const begins = ({ from, to }: Spell) => from <= start + 1e-9 && start < to - 1e-9;
  if (finish > start) {
    for (const rest of restsOf(work, own)) {
      if (begins(rest)) wrong.push(`${task.id} starts at ${start}, in a rest of its crew`);
      if (isWhole(work, task) && touches(rest)) {
        wrong.push(`${task.id} cannot be left half done and runs into a rest at ${rest.from}`);
      }
    }
    for (const dark of task.daylight ? nightsOf(work) : []) {
      if (touches(dark)) wrong.push(`${task.id} wants daylight and runs into the dark`);
    }
  }
  const { start: fixed, crews = [] } = task.fixed ?? {};
  if (fixed !== undefined && fixed >= now && Math.abs(start - fixed) > 1 / 60) {
    wrong.push(`${task.id} is fixed to ${fixed} and starts at ${start}`);
  }
  const taken = own.crews.map(({ crew }) => crew);
  const missing = taken.length > 0 ? crews.filter((crew) => !taken.includes(crew)) : [];
  if (missing.length > 0) wrong.push(`${task.id} is fixed to ${missing}, who are not there`);
  return wrong;
}
