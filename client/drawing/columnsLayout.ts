import type { Course, TaskRun } from '#domain/forecast/course.ts';
import { isAtWork } from '#domain/progress/standing.ts';
import type { BuildState, HoldStatus, TaskStatus } from '#domain/progress/state.ts';
import type { Task } from '#domain/tasks/task.ts';

/** One task in one crew's column. Times in minutes after the start; lanes lie side by side where jobs overlap. */
export type Box = TaskRun & {
  /** The task's number: what a box too narrow for a name shows. */
  readonly number: number;
  readonly name: string;
  readonly status: TaskStatus;
  readonly people: number;
  readonly lane: number;
  readonly lanes: number;
};

/** A keep-off task: a band across everybody, with its own people named. */
export type Band = TaskRun & {
  readonly name: string;
  readonly status: TaskStatus;
  readonly own: readonly { readonly crew: string; readonly people: number }[];
};

/** A hold point: a line across everybody with a box. */
export type HoldLine = {
  readonly task: string;
  readonly name: string;
  readonly at: number;
  readonly state: HoldStatus;
};

export type Columns = {
  readonly columns: readonly { readonly crew: string; readonly boxes: readonly Box[] }[];
  readonly bands: readonly Band[];
  readonly holds: readonly HoldLine[];
  /** Minutes after the start that the columns cover. */
  readonly from: number;
  readonly to: number;
};

/** Lays every planned task into its crews' columns: what was told for the past, the course for what is to come. */
export function layColumns(state: BuildState, course: Course): Columns {
  const crewsOf = new Map(state.plan?.tasks.map((one) => [one.task, one.crews]));
  const boxes = new Map<string, Omit<Box, 'lane' | 'lanes'>[]>();
  const bands: Band[] = [];
  const holds: HoldLine[] = [];
  for (const task of state.work.tasks) {
    const run = course.runs.get(task.id);
    if (!run) continue;
    const status = statusOf(state, task);
    const own = (crewsOf.get(task.id) ?? []).filter(({ people }) => people > 0);
    if (task.hold) holds.push(holdLine(state, task, run));
    if (task.keepOff) {
      bands.push({ ...run, name: task.name, status, own });
      continue;
    }
    for (const { crew, people } of own) {
      const column = boxes.get(crew) ?? [];
      column.push({ ...run, number: task.number, name: task.name, status, people });
      boxes.set(crew, column);
    }
  }
  const all = [...course.runs.values()];
  return {
    columns: state.work.crews
      .filter(({ id }) => boxes.has(id))
      .map(({ id }) => ({ crew: id, boxes: intoLanes(boxes.get(id) ?? []) })),
    bands: bands.toSorted((a, b) => a.start - b.start),
    holds: holds.toSorted((a, b) => a.at - b.at),
    from: Math.min(0, ...all.map(({ start }) => start)),
    to: Math.max(course.opening, ...all.map(({ finish }) => finish)),
  };
}

function statusOf(state: BuildState, task: Task): TaskStatus {
  const told = state.tasks[task.id];
  if (!told) return 'to-come';
  return told.status === 'to-come' && isAtWork(told) ? 'at-work' : told.status;
}

function holdLine(state: BuildState, task: Task, run: TaskRun): HoldLine {
  const hold = state.tasks[task.id]?.hold ?? 'open';
  return { task: task.id, name: task.name, at: run.finish, state: hold };
}

/** Jobs of one crew that overlap lie side by side, each group as wide as its busiest moment needs. */
function intoLanes(boxes: readonly Omit<Box, 'lane' | 'lanes'>[]): Box[] {
  const sorted = boxes.toSorted((a, b) => a.start - b.start || a.finish - b.finish);
  const laid: Box[] = [];
  let group: { box: (typeof sorted)[number]; lane: number }[] = [];
  let ends: number[] = [];
  const close = (): void => {
    for (const { box, lane } of group) laid.push({ ...box, lane, lanes: ends.length });
    group = [];
    ends = [];
  };
  for (const box of sorted) {
    if (ends.every((end) => end <= box.start)) close();
    const free = ends.findIndex((end) => end <= box.start);
    const lane = free < 0 ? ends.length : free;
    ends[lane] = box.finish;
    group.push({ box, lane });
  }
  close();
  return laid;
}
