import type { Plan } from '../../schedule/plan.ts';
import { expectedMinutes } from '../../tasks/expected.ts';
import type { Work } from '../../tasks/work.ts';
import type { Doubts } from '../doubt/compileDoubt.ts';
import { darkFactor } from '../doubt/conditions.ts';
import { stretchThen, taskFactors } from '../doubt/taskFactors.ts';
import type { Tick } from '../learn/ticks.ts';
import { trustOf } from '../learn/trust.ts';
import { workedMinutes } from '../learn/worked.ts';
import { lightClock } from '../light/lightClock.ts';

/** One task as it went against the plan. Minutes. */
export type PlayedTask = {
  readonly task: string;
  readonly name: string;
  readonly crews: readonly string[];
  /** With the planned people. */
  readonly planned: number;
  /** By the clock, less the time that it stood still. */
  readonly actual: number;
  /** What that is with the usual people, by day and with no condition that makes work longer: as a kit states it. */
  readonly usual: number;
  /** How far the ticks can be taken for minutes, 0 to 1. */
  readonly trust: number;
};

const day = lightClock([], 1);

/** The finished tasks of a build whose start was told, in the order of the work. */
export function playedTasks(
  work: Work,
  plan: Plan,
  ticks: readonly Tick[],
  { doubt, dark = [] }: Pick<Doubts, 'doubt' | 'dark'>,
): PlayedTask[] {
  const clock = lightClock(doubt.light.on ? dark : [], darkFactor(doubt));
  const planned = new Map(plan.tasks.map((task) => [task.task, task]));
  const finished = new Map(
    ticks.filter(({ finish }) => finish !== null).map((tick) => [tick.task, tick]),
  );
  const factors = taskFactors(work, plan, doubt);
  const stretch = stretchThen(work);
  const expected = new Map(
    work.tasks.map(({ id, minutes }) => [id, expectedMinutes(minutes, plan.shape)]),
  );
  const rows = new Map(work.tasks.map((task, row) => [task.id, row]));
  const factorOf = (row: number) => {
    const own = planned.get(work.tasks[row]!.id);
    const fit = finished.get(work.tasks[row]!.id)?.fit;
    return factors[row]! * (own ? stretch(work.tasks[row]!, own, fit) : 1);
  };
  const trust = trustOf([...finished.values()], (id) => {
    const row = rows.get(id);
    return row === undefined ? 0 : work.tasks[row]!.minutes.quick * factorOf(row);
  });
  return work.tasks.flatMap((task, row): PlayedTask[] => {
    const tick = finished.get(task.id);
    const own = planned.get(task.id);
    if (!tick || !own || tick.finish === null) return [];
    const { start, finish, stops } = tick;
    const factor = factorOf(row);
    return [
      {
        task: task.id,
        name: task.name,
        crews: tick.crews,
        planned: expected.get(task.id)! * own.stretch,
        actual: workedMinutes(day, start, finish, stops),
        usual: workedMinutes(clock, start, finish, stops) / factor,
        trust: trust.get(task.id)!,
      },
    ];
  });
}
