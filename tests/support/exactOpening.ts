import loadHighs from 'highs';
import type { PlannedTask } from '#domain/schedule/plan.ts';
import type { Task } from '#domain/tasks/task.ts';
import type { Work } from '#domain/tasks/work.ts';
import { bankOf } from './checkCrossing.ts';
import { changesOf, there } from './checkLimits.ts';
import { checkTimes, doneAt } from './workClock.ts';

const highs = await loadHighs();

/**
 * The earliest finish of the last task, proved by a time-indexed mixed integer model (Pritsker, Watters, Wolfe,
 * Management Science 16(1), 1969) in whole minutes. For small orders of work only: whole minutes, one need for each
 * task with people that are always the usual ones, zones with a limit of room; equipment, skills within a crew, rests,
 * the dark, daylight, fixed starts and strength that changes are taken in, and crossing where every task has a bank.
 * Written apart from the planner.
 */
export function exactOpening(work: Work): number {
  const slack = work.links.reduce((sum, { wait }) => sum + Math.max(0, wait), 0);
  const sum = work.tasks.reduce((total, task) => total + task.minutes.likely, 0);
  const { spells = [], factor = 1 } = work.dark ?? {};
  const rests = work.crews.flatMap(({ rests: own = [] }) => own);
  const changes = [...rests.map(({ to }) => to), ...spells.map(({ to }) => to), ...changesOf(work)];
  const crossings = (work.crossing ?? 0) * work.tasks.length;
  const horizon = Math.ceil(sum * factor) + slack + Math.max(0, ...changes) + crossings;
  type Variable = { name: string; task: Task; crew: string; start: number; finish: number };
  const variables = work.tasks.flatMap((task, row) =>
    work.crews
      .filter(({ id, people }) => {
        const { anyOf, people: wanted } = task.needs[0]!;
        const enough = people >= wanted.usual || changesOf(work).length > 0;
        return (anyOf.length === 0 || anyOf.includes(id)) && enough;
      })
      .flatMap(({ id }) =>
        Array.from({ length: horizon - task.minutes.likely + 1 }, (_, start): Variable => {
          const finish = doneAt(work, task, manned(task, id), start, task.minutes.likely);
          return { name: `x_${row}_${id}_${start}`, task, crew: id, start, finish };
        }),
      )
      .filter(({ crew, start, finish }) => {
        const own = { ...manned(task, crew), start, finish };
        return finish <= horizon && checkTimes(work, task, own, 0).length === 0;
      }),
  );
  const of = (task: string | undefined) => variables.filter((one) => one.task.id === task);
  const term = (factor: number, { name }: Variable) =>
    `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`;
  const rows: string[] = [];
  for (const { id } of work.tasks) {
    rows.push(
      `${of(id)
        .map((one) => term(1, one))
        .join(' ')} = 1`,
    );
    rows.push(
      `T ${of(id)
        .map((one) => term(-one.finish, one))
        .join(' ')} >= 0`,
    );
  }
  for (const { from, to, counts, wait } of work.links) {
    const later = of(to).map((one) => term(one.start, one));
    const sooner = of(from).map((one) => {
      return term(-(counts === 'finish' ? one.finish : one.start), one);
    });
    rows.push(`${[...later, ...sooner].join(' ')} >= ${wait}`);
  }
  for (let moment = 0; moment < horizon; moment += 1) {
    const running = variables.filter(({ start, finish }) => start <= moment && moment < finish);
    const limit = (held: Variable[], amount: (one: Variable) => number, most: number) => {
      const some = held.filter((one) => amount(one) > 0);
      if (some.length > 0)
        rows.push(`${some.map((one) => term(amount(one), one)).join(' ')} <= ${most}`);
    };
    for (const { id, count } of work.equipment ?? []) {
      const held = ({ task }: Variable) => task.equipment?.find((one) => one.id === id)?.count ?? 0;
      limit(running, held, count);
    }
    for (const crew of work.crews) {
      for (const { skill, people } of crew.skilled ?? []) {
        const held = ({ task }: Variable) =>
          task.needs[0]!.with?.find((one) => one.skill === skill)?.people ?? 0;
        limit(
          running.filter((one) => one.crew === crew.id),
          held,
          people,
        );
      }
      const most = there(work, crew.id, Number.POSITIVE_INFINITY);
      // Who is at work in this minute starts on the other bank no sooner than the crossing after its end.
      for (let gap = 0; gap <= (work.crossing ?? -1); gap += 1) {
        for (const [bank, other] of [
          ['near', 'far'],
          ['far', 'near'],
        ]) {
          const later = variables.filter(
            ({ start, finish }) => start <= moment + gap && moment + gap < finish,
          );
          const here = running.filter(({ task }) => bankOf(work, task.id) === bank);
          const across = later.filter(({ task }) => bankOf(work, task.id) === other);
          const own = [...here, ...across].filter((one) => one.crew === crew.id);
          limit(own, ({ task }) => task.needs[0]!.people.usual, most);
        }
      }
    }
    for (const crew of work.crews) {
      const held = running.filter(
        (one) => one.crew === crew.id && one.task.needs[0]!.people.usual > 0,
      );
      if (held.length > 0) {
        rows.push(
          `${held.map((one) => term(one.task.needs[0]!.people.usual, one)).join(' ')} <= ${there(work, crew.id, moment)}`,
        );
      }
    }
    for (const zone of work.zones) {
      const room = zone.room as number;
      const held = running.filter(({ task }) => task.zones.includes(zone.id));
      const amount = ({ task }: Variable) => (task.keepOff ? room : task.needs[0]!.people.usual);
      if (held.length > 0) {
        rows.push(`${held.map((one) => term(amount(one), one)).join(' ')} <= ${room}`);
      }
    }
  }
  const model = [
    'Minimize',
    ' obj: T',
    'Subject To',
    ...rows.map((row, at) => ` r${at}: ${row}`),
    'Binary',
    ...variables.map(({ name }) => ` ${name}`),
    'End',
  ].join('\n');
  const solution = highs.solve(model, { output_flag: false, mip_rel_gap: 0 });
  if (solution.Status !== 'Optimal')
    throw new Error(`The exact model ended as ${solution.Status}.`);
  return Math.round(solution.ObjectiveValue);
}

/** The task as that crew would do it, whenever. */
function manned(task: Task, crew: string): PlannedTask {
  const crews = [{ crew, people: task.needs[0]!.people.usual }];
  const reason = { kind: 'start' } as const;
  return { task: task.id, crews, start: 0, finish: 0, release: 0, stretch: 1, reason };
}
