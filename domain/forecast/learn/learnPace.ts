import type { Plan } from '../../schedule/plan.ts';
import { expectedMinutes } from '../../tasks/expected.ts';
import type { Work } from '../../tasks/work.ts';
import type { Doubts } from '../doubt/compileDoubt.ts';
import { darkFactor } from '../doubt/conditions.ts';
import type { Doubt } from '../doubt/doubt.ts';
import { stretchThen, taskFactors } from '../doubt/taskFactors.ts';
import type { Shape } from '../forecast.ts';
import { lightClock } from '../light/lightClock.ts';
import { logMoments } from './logMoments.ts';
import { loading, type Pace, priorPace, projected } from './pace.ts';
import type { Tick } from './ticks.ts';
import { trustOf } from './trust.ts';
import { type Evidence, learnFinished, learnRunning } from './update.ts';
import { workedMinutes } from './worked.ts';

/** Deviation in minutes with which a start or a finish is told. Common practice, no source. */
export const tellError = 0.2;

/**
 * What the ticks of a build teach of day and crews, beginning with what the doubt states: each finished task by how much
 * longer it took than expected, each task at work by having lasted so long. `now` is in minutes after the start of the
 * build. The order of the ticks does not matter.
 */
export function learnPace(
  work: Work,
  plan: Plan,
  shape: Shape,
  ticks: readonly Tick[],
  now: number,
  { doubt, dark = [] }: Pick<Doubts, 'doubt' | 'dark'>,
): Pace {
  const clock = lightClock(doubt.light.on ? dark : [], darkFactor(doubt));
  const rows = new Map(work.tasks.map(({ id }, row) => [id, row]));
  const planned = new Map(plan.tasks.map((task) => [task.task, task]));
  const factors = taskFactors(work, plan, doubt);
  const stretch = stretchThen(work);
  const jams = jamsOf(doubt);
  const known = ticks
    .filter(({ task }) => rows.has(task))
    .toSorted((one, other) => (one.task < other.task ? -1 : 1));
  const factorOf = (row: number, fit: Tick['fit']) => {
    const own = planned.get(work.tasks[row]!.id);
    return factors[row]! * (own ? stretch(work.tasks[row]!, own, fit) : 1);
  };
  const fits = new Map(known.map(({ task, fit }) => [task, fit]));
  const trust = trustOf(known, (id) => {
    const row = rows.get(id)!;
    return work.tasks[row]!.minutes.quick * factorOf(row, fits.get(id));
  });
  const prior = priorPace(work, doubt);
  const moments = momentsOf(shape, doubt);

  const evidenceOf = (of: readonly Tick[]): Evidence[] =>
    of.map(evidence).filter((seen) => seen !== null);
  const evidence = (tick: Tick): Evidence | null => {
    const row = rows.get(tick.task)!;
    const task = work.tasks[row]!;
    const own = planned.get(task.id);
    const estimate = moments(task.minutes);
    const worked = workedMinutes(clock, tick.start, tick.finish ?? now, tick.stops);
    if (estimate === null || own === undefined || worked <= 0) return null;
    const factor = factorOf(row, tick.fit);
    const crews =
      tick.crews.length > 0
        ? tick.crews
        : own.crews.filter(({ people }) => people > 0).map(({ crew }) => crew);
    // All that weighs a task is taken from what was expected of it: weights from what was seen would favour slow work.
    const expected = Math.exp(estimate.mean) * factor;
    const jam = (jams.get(task.id) ?? []).map(({ chance, minutes }) => ({
      chance,
      log: Math.log1p(minutes / expected),
    }));
    const mean = estimate.mean + jam.reduce((sum, { chance, log }) => sum + chance * log, 0);
    const variance =
      estimate.variance +
      jam.reduce((sum, { chance, log }) => sum + chance * (1 - chance) * log * log, 0) +
      2 * (tellError / expected) ** 2;
    const weight = tick.finish === null ? 1 : trust.get(task.id)!;
    return {
      row: loading(prior, crews),
      log: Math.log(worked / factor) - mean,
      variance: variance / weight,
    };
  };
  const finished = evidenceOf(known.filter(({ finish }) => finish !== null));
  const running = evidenceOf(known.filter(({ finish }) => finish === null));
  const scatter = scatterOf(prior, finished);
  const learned = finished
    .map((seen) => ({ ...seen, variance: seen.variance * scatter }))
    .reduce(learnFinished, prior);
  return running.reduce(learnRunning, learned);
}

/** Finished tasks that the prior opinion of a scatter as estimated is worth. Common practice, no source. */
const scatterPrior = 10;

/**
 * How much wider the tasks scatter about the pace they have in common than their estimates say, at least 1: the mean of
 * the inverse gamma curve that goes with a normal one of unknown width (as in any textbook of Bayesian statistics),
 * from the surprise of each task given those before it. Tasks that scatter widely say less of their crew.
 */
function scatterOf(prior: Pace, finished: readonly Evidence[]): number {
  let pace = prior;
  let surprise = 0;
  for (const seen of finished) {
    const expected = projected(pace, seen.row);
    surprise += (seen.log - expected.mean) ** 2 / (expected.variance + seen.variance);
    pace = learnFinished(pace, seen);
  }
  return Math.max(1, (scatterPrior + surprise) / (scatterPrior + finished.length));
}

/** Each estimate is looked at once: bays are alike. */
function momentsOf(shape: Shape, doubt: Doubt) {
  const known = new Map<string, ReturnType<typeof logMoments>>();
  return (minutes: { quick: number; likely: number; slow: number }) => {
    const key = `${minutes.quick} ${minutes.likely} ${minutes.slow}`;
    let found = known.get(key);
    if (found === undefined) {
      const sure = expectedMinutes(minutes, shape);
      const estimate = doubt.own ? minutes : { quick: sure, likely: sure, slow: sure };
      found = logMoments(shape, estimate);
      known.set(key, found);
    }
    return found;
  };
}

/** What may have held a task up while it was at work, so that one jam is not taken for a slow crew. */
function jamsOf(doubt: Doubt) {
  const jams = new Map<string, { chance: number; minutes: number }[]>();
  for (const event of doubt.events) {
    if (event.kind !== 'jam' || !event.on) continue;
    for (const task of event.tasks) {
      const jam = { chance: event.chance, minutes: event.delay.likely };
      jams.set(task, [...(jams.get(task) ?? []), jam]);
    }
  }
  return jams;
}
