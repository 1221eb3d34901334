import type { ClassicEstimate } from '#domain/forecast/classic.ts';
import type { Forecast } from '#domain/forecast/forecast.ts';
import type { CriticalPath } from '#domain/schedule/criticalPath.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import { reasonSentence } from '#domain/schedule/reasonSentence.ts';
import type { Finding } from '#domain/tasks/health/finding.ts';
import type { Work } from '#domain/tasks/work.ts';

/** What `spanwright plan --json` prints: fixed fields, minutes throughout, tasks in order of planned start. */
export function planReport(
  work: Work,
  plan: Plan,
  critical: CriticalPath,
  classic: ClassicEstimate,
  forecast: Forecast,
  health: readonly Finding[],
) {
  const byTask = new Map(critical.tasks.map((task) => [task.task, task]));
  const { runs, seed, shape, mean, sd, p10, p50, p80, p90, chanceBy } = forecast;
  return rounded({
    minutesToOpen: plan.minutesToOpen,
    lowerBound: plan.lowerBound,
    criticalPath: [...critical.path],
    tasks: plan.tasks.map(({ task, crews, start, finish, reason }) => {
      const { task: _, ...floats } = byTask.get(task) as CriticalPath['tasks'][number];
      return { task, crews, start, finish, ...floats, reason: reasonSentence(work, reason) };
    }),
    classic: { mean: classic.mean, variance: classic.variance, chanceBy: classic.chanceBy },
    forecast: { runs, seed, shape, mean, sd, p10, p50, p80, p90, chanceBy },
    health: [...health],
  });
}

/** Numbers to nine places, so that whole ones print whole. */
function rounded<Value>(value: Value): Value {
  const round = (inner: unknown): unknown => {
    if (typeof inner === 'number') {
      return Math.round(inner * 1e9) / 1e9 + 0;
    }
    if (Array.isArray(inner)) {
      return inner.map(round);
    }
    if (inner !== null && typeof inner === 'object') {
      return Object.fromEntries(Object.entries(inner).map(([key, one]) => [key, round(one)]));
    }
    return inner;
  };
  return round(value) as Value;
}
