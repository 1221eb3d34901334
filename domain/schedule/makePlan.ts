import type { Shape } from '../forecast/forecast.ts';
import type { Refusal } from '../refusal.ts';
import { bad, good, type Result } from '../result.ts';
import type { Work } from '../tasks/work.ts';
import { type Compilation, compile } from './compile.ts';
import { type HandedTask, handOver } from './handOver.ts';
import type { PlanNews } from './improve/news.ts';
import { scheduleLike } from './improve/scheduleLike.ts';
import { lowerBound } from './lowerBound.ts';
import { type Manning, manningOf } from './manning.ts';
import { nothingFound } from './nothingFound.ts';
import { openingTasks } from './opening.ts';
import type { Past } from './past.ts';
import type { Plan, PlannedTask } from './plan.ts';
import { refuseFaultyWork } from './refuseFaultyWork.ts';
import type { Schedule } from './schedule.ts';
import { searchPlan } from './searchPlan.ts';
import { type SettledPast, settlePast } from './settled.ts';

export type PlanOptions = {
  readonly shape: Shape;
  /** False: as many people as anybody wants; zones and keep-off still hold. */
  readonly crews: boolean;
  readonly past?: Past | undefined;
  /**
   * Most schedules to try. By default enough for a good plan well within a second; from `Number.MAX_SAFE_INTEGER` on it
   * goes on until stopped, until no faster order exists, or until it has long gained nothing.
   */
  readonly effort?: number | undefined;
  readonly seed?: number | undefined;
  /** Asked before each schedule but the first: true takes the best found so far. */
  readonly shouldStop?: (() => boolean) | undefined;
  /** Told of each better plan and each higher bound as they are found. */
  readonly report?: ((news: PlanNews) => void) | undefined;
  /** The accepted plan, in a re-plan: its orders are kept where changing them does not gain enough. */
  readonly near?: Plan | undefined;
  /** A plan to start from: the new one opens no later, as long as the work still allows it. */
  readonly from?: Plan | undefined;
};

/** Work of a search by default, in tasks placed times the doublings of their number: a few tenths of a second. */
const defaultWork = 900_000;

/**
 * Plans the order of work for the earliest opening: crews and people for every task, hand-overs, start and finish,
 * and why each task cannot start earlier. What comes after the opening never delays it. Done tasks stay as they were,
 * tasks at work run on, stopped ones rest until taken up again, nothing starts before now.
 * The same input gives the same plan. What it cannot plan is refused, never left out.
 */
export function makePlan(work: Work, options: PlanOptions): Result<Plan, Refusal> {
  const faulty = refuseFaultyWork(work);
  if (faulty) {
    return bad(faulty);
  }
  const manning = manningOf(work, options.shape, options.crews);
  const past = settlePast(manning, options.past);
  if (!past.ok) {
    return past;
  }
  const compilation = compile(manning, past.value);
  if (!compilation.ok) {
    return compilation;
  }
  const { compiled, forBounds } = compilation.value;
  const bound = lowerBound(forBounds);
  const { effort = defaultEffort(compiled.count), seed = 1, shouldStop, report } = options;
  const start = options.near ?? options.from;
  const like =
    start &&
    scheduleLike(
      compilation.value,
      work.crews.map(({ id }) => id),
      start,
    );
  const found = searchPlan(compiled, {
    effort,
    seed,
    bound,
    forBounds,
    shouldStop,
    like,
    keep: options.near !== undefined,
    report:
      report &&
      ((opening, lower, schedules) =>
        report({
          minutesToOpen: opening / 60,
          lowerBound: lower / 60,
          schedules,
          proven: opening <= lower,
        })),
  });
  if (!found) {
    return bad(nothingFound(manning, compilation.value));
  }
  return planOf(manning, past.value, compilation.value, found.schedule, found.bound);
}

function defaultEffort(tasks: number): number {
  const each = Math.max(2, tasks) * Math.log2(Math.max(2, tasks));
  return Math.min(4000, Math.max(12, Math.round(defaultWork / each)));
}

function planOf(
  manning: Manning,
  past: SettledPast,
  compilation: Compilation,
  schedule: Schedule,
  bound: number,
): Result<Plan, Refusal> {
  const { work, shape } = manning;
  const passed = handOver(manning, past, compilation, schedule);
  const late = passed?.tasks.some(
    ({ finish }, task) => finish > compilation.compiled.to[passed.way[task]!]!,
  );
  if (!passed || late) {
    return bad(nothingFound(manning, compilation));
  }
  const { tasks: handed, way: ways, handOvers } = passed;
  const byId = new Map<string, PlannedTask>();
  for (const [number, task] of compilation.tasks.entries()) {
    const way = compilation.ways[ways[number]!]!;
    const crews = way.crews.map(({ crew, people }) => ({ crew: work.crews[crew]!.id, people }));
    const times = inMinutes(handed[number]!);
    byId.set(task.id, { task: task.id, crews, ...times, stretch: way.stretch });
  }
  for (const [id, settled] of past.tasks) {
    const { start, finish, stretch } = settled;
    const times = inMinutes({ start, finish, release: start, reason: { kind: 'past' } });
    byId.set(id, { task: id, crews: [...settled.crews], ...times, stretch });
  }
  // In order of start, and along the links where starts are alike.
  const tasks = [...compilation.links.numbers.keys()]
    .map((id) => byId.get(id) as PlannedTask)
    .sort((one, other) => one.start - other.start);
  const goal = openingTasks(work);
  const opening = tasks
    .filter(({ task }) => goal.has(task))
    .reduce((last, task) => (task.finish >= last.finish ? task : last));
  return good({
    format: 'spanwright-plan',
    version: 1,
    tasks,
    handOvers,
    opening: opening.task,
    minutesToOpen: opening.finish,
    lowerBound: bound / 60,
    shape,
  });
}

function inMinutes({ start, finish, release, reason }: HandedTask) {
  return { start: start / 60, finish: finish / 60, release: release / 60, reason };
}
