import type { LapseCause } from '../../tasks/hold.ts';
import type { Task } from '../../tasks/task.ts';
import { finishedBefore, guardedBy, orderIndex } from '../orderIndex.ts';
import { mayWorkAt } from '../plannedCrews.ts';
import type { BuildState } from '../state.ts';

/** Wind that a hold stands without a limit of its own, in metres per second. Common practice, no source. */
const windLimit = 12;

/** The passes that a task makes worthless: by moving the bridge as soon as it moves, by jacking once it is jacked. */
export function lapsedByWork(state: BuildState, id: string, finishes: boolean): string[] {
  const task = orderIndex(state.work).task.get(id)!;
  const moves = task.effect?.kind === 'move';
  const jacks = finishes && task.keepOff && task.place?.part === 'jack';
  return [
    ...(moves ? lapsedBy(state, 'move', { besides: id }) : []),
    ...(jacks ? lapsedBy(state, 'jack', { besides: id }) : []),
  ];
}

export function lapsedByHalt(state: BuildState): string[] {
  return lapsedBy(state, 'halt');
}

/** The passes that hang on who does the work: those of holds that guard a task of the relieved crew. */
export function lapsedByRelief(state: BuildState, crew: string): string[] {
  return lapsedBy(state, 'relief').filter((hold) =>
    [...guardedBy(state.work, hold)].some((id) => {
      const task = orderIndex(state.work).task.get(id)!;
      return state.tasks[id]?.status !== 'done' && mayWorkAt(state, task, crew);
    }),
  );
}

/** The passes that do not hold in this wind: by the hold's own limit where it measures wind, or what was conceded. */
export function lapsedByWind(state: BuildState, speed: number): string[] {
  return lapsedBy(state, 'wind').filter((id) => {
    const measures = orderIndex(state.work).task.get(id)?.hold?.measures ?? [];
    const wind = measures.find(({ unit }) => unit === 'm/s');
    const limit = wind?.most ?? windLimit;
    const { concession, values } = state.tasks[id]?.inspections.at(-1) ?? {};
    const conceded = wind && concession?.of.includes(wind.key) ? Number(values?.[wind.key]) : limit;
    return speed > Math.max(limit, conceded);
  });
}

/** The passes that rest on work which no longer counts as done. */
export function lapsedByRedo(state: BuildState, undone: readonly string[]): string[] {
  return liveHolds(state)
    .filter(({ id }) => !undone.includes(id))
    .filter(({ id }) => {
      const before = finishedBefore(state.work, id);
      return undone.some((task) => before.has(task));
    })
    .map(({ id }) => id);
}

function lapsedBy(
  state: BuildState,
  cause: LapseCause,
  { besides }: { besides?: string } = {},
): string[] {
  return liveHolds(state, besides)
    .filter(({ hold }) => hold?.lapsesOn.includes(cause))
    .map(({ id }) => id);
}

/** Holds that are passed and still guard something that is not done, `besides` left out. A spent pass stays a pass. */
function liveHolds(state: BuildState, besides?: string): Task[] {
  return state.work.tasks.filter(({ id, hold }) => {
    if (!hold || state.tasks[id]?.hold !== 'passed') return false;
    return [...guardedBy(state.work, id)].some(
      (guarded) => guarded !== besides && state.tasks[guarded]?.status !== 'done',
    );
  });
}
