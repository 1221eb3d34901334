import type { Past } from '../../schedule/past.ts';
import type { Plan } from '../../schedule/plan.ts';
import type { Task } from '../../tasks/task.ts';
import type { Work } from '../../tasks/work.ts';
import { compileDraws, type Draws, drawRun, type Random } from '../draws.ts';
import type { DrawTables } from '../drawTables.ts';
import type { Shape } from '../forecast.ts';
import { crewsOf } from '../learn/crewsOf.ts';
import { learnPace } from '../learn/learnPace.ts';
import type { Pace } from '../learn/pace.ts';
import type { Tick } from '../learn/ticks.ts';
import { workedMinutes } from '../learn/worked.ts';
import { type DarkSpell, type LightClock, lightClock } from '../light/lightClock.ts';
import { type Outlook, outlooks, overdueShare } from '../outlook.ts';
import { cdf } from '../spread.ts';
import { compileEvents, type Events } from './compileEvents.ts';
import { darkFactor } from './conditions.ts';
import type { Doubt } from './doubt.ts';
import { drawEvents, type EventRoom } from './drawEvents.ts';
import { drawRunning, type Running, runningTasks } from './running.ts';
import { drawFactors, type SharedFactors, sharedFactors } from './sharedFactors.ts';
import { sureWork } from './sureWork.ts';
import { stretchNow, taskFactors } from './taskFactors.ts';

/** What a forecast with doubt is told beside work, plan and past. */
export type Doubts = {
  readonly doubt: Doubt;
  /** When it is dark at the site; none when absent. */
  readonly dark?: readonly DarkSpell[];
  /** What was told of minutes at work: day and crews are learned from it, and stops are no work. */
  readonly ticks?: readonly Tick[];
  /** What is believed of day and crews; what the ticks teach when absent. */
  readonly pace?: Pace;
  /** Ids of loads that have come, or of which somebody told when they will: no event makes those late. */
  readonly toldLoads?: readonly string[];
};

/** All that drawing a run with doubt needs. */
export type CompiledDoubt = {
  readonly outlooks: readonly Outlook[];
  readonly draws: Draws;
  readonly shared: SharedFactors;
  readonly running: readonly Running[];
  readonly events: Events;
  readonly room: EventRoom;
  readonly clock: LightClock;
};

/** When it is dark, and how many times as long work then takes: no longer where light is no condition. */
export function darkIn({ doubt, dark = [] }: Doubts): NonNullable<Work['dark']> {
  return { spells: [...dark], factor: doubt.light.on ? darkFactor(doubt) : 1 };
}

/** Lays out the doubt for the runs. Throws when plan and work do not belong together. */
export function compileDoubt(
  work: Work,
  plan: Plan,
  shape: Shape,
  past: Past | undefined,
  tables: DrawTables,
  doubts: Doubts,
): CompiledDoubt {
  const { doubt, ticks = [], toldLoads = [] } = doubts;
  const now = past?.now ?? 0;
  const pace = doubts.pace ?? learnPace(work, plan, shape, ticks, now, doubts);
  const night = darkIn(doubts);
  const clock = lightClock(doubt.light.on ? night.spells : [], night.factor);
  const drawn = doubt.own ? work : sureWork(work, shape);
  const stretch = stretchNow(work);
  const byTask = new Map(ticks.map((tick) => [tick.task, tick]));
  const worked = (task: Task, from: number, to: number) =>
    workedMinutes(clock, from, to, byTask.get(task.id)?.stops ?? []);
  const looked = outlooks(drawn, plan, shape, past, { stretch, worked });
  const factors = taskFactors(work, plan, doubt);
  const crews = crewsOf(work, plan, past);
  const shared = sharedFactors(pace, crews);
  const draws = compileDraws(looked, shape, tables);
  for (let task = 0; task < factors.length; task++) {
    draws.quick[task]! *= factors[task]!;
    draws.range[task]! *= factors[task]!;
  }
  const planned = new Map(plan.tasks.map((task) => [task.task, task]));
  // From here on: what the minutes of the estimate are multiplied by, people included.
  work.tasks.forEach((task, row) => {
    factors[row]! *= stretch(task, planned.get(task.id)!);
  });
  const running = runningTasks(looked, factors, shape);
  const told = new Set(toldLoads);
  const world = {
    work: drawn,
    outlooks: looked,
    shape,
    tables,
    factors,
    told,
    now: past?.now ?? 0,
  };
  const events = compileEvents(doubt.events, world);
  const most = Math.max(0, ...events.holds.map(({ redo }) => redo.length));
  return {
    outlooks: looked,
    draws,
    shared,
    running: shared.sure ? settleRunning(running, draws, shared, shape) : running,
    events,
    room: { ...shared, done: new Float64Array(most) },
    clock,
  };
}

/** Where every run has the same factors, what is left of a running task's curve is known beforehand. */
function settleRunning(
  running: readonly Running[],
  draws: Draws,
  { groupOf, groupFactor }: SharedFactors,
  shape: Shape,
): Running[] {
  for (const { task, elapsed, quick, likely, slow, factor } of running) {
    const shared = groupFactor[groupOf[task]!]!;
    const usual = elapsed / shared;
    if (usual < slow) {
      draws.ruledOut[task] = cdf(shape, { quick, likely, slow }, usual);
      draws.quick[task] = (quick - usual) * factor;
    } else {
      draws.quick[task] = overdueShare * likely * factor;
      draws.range[task] = 0;
    }
  }
  return [];
}

/** Draws one run: the minutes of every task, and in `from` when the tasks of late trucks may start. */
export function drawDoubt(
  { draws, shared, running, events, room }: CompiledDoubt,
  random: Random,
  minutes: Float64Array,
  bits: Int32Array,
  from: Float64Array,
): void {
  drawRun(draws, random, minutes, bits);
  drawFactors(shared, random);
  const { groupOf, groupFactor } = shared;
  for (let task = 0; task < minutes.length; task++) {
    minutes[task]! *= groupFactor[groupOf[task]!]!;
  }
  drawRunning(running, draws, shared, bits, minutes);
  drawEvents(events, draws.tables.values, random, minutes, from, room);
}
