import loadHighs from 'highs';
import type { Task } from '#domain/tasks/task.ts';
import type { Work } from '#domain/tasks/work.ts';

const highs = await loadHighs();

/**
 * The earliest finish of the last task, proved by a time-indexed mixed integer model (Pritsker, Watters, Wolfe,
 * Management Science 16(1), 1969) in whole minutes. For small orders of work only: whole minutes, one need for each
 * task with people that are always the usual ones, zones with a limit of room. Written apart from the planner.
 */
export function exactOpening(work: Work): number {
  const slack = work.links.reduce((sum, { wait }) => sum + Math.max(0, wait), 0);
  const horizon = work.tasks.reduce((sum, task) => sum + task.minutes.likely, 0) + slack;
  type Variable = { name: string; task: Task; crew: string; start: number };
  const variables = work.tasks.flatMap((task, row) =>
    work.crews
      .filter(({ id, people }) => {
        const { anyOf, people: wanted } = task.needs[0]!;
        return (anyOf.length === 0 || anyOf.includes(id)) && people >= wanted.usual;
      })
      .flatMap(({ id }) =>
        Array.from({ length: horizon - task.minutes.likely + 1 }, (_, start): Variable => {
          return { name: `x_${row}_${id}_${start}`, task, crew: id, start };
        }),
      ),
  );
  const of = (task: string | undefined) => variables.filter((one) => one.task.id === task);
  const term = (factor: number, { name }: Variable) =>
    `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`;
  const rows: string[] = [];
  for (const { id, minutes } of work.tasks) {
    rows.push(
      `${of(id)
        .map((one) => term(1, one))
        .join(' ')} = 1`,
    );
    rows.push(
      `T ${of(id)
        .map((one) => term(-(one.start + minutes.likely), one))
        .join(' ')} >= 0`,
    );
  }
  for (const { from, to, counts, wait } of work.links) {
    const later = of(to).map((one) => term(one.start, one));
    const sooner = of(from).map((one) => {
      return term(-(one.start + (counts === 'finish' ? one.task.minutes.likely : 0)), one);
    });
    rows.push(`${[...later, ...sooner].join(' ')} >= ${wait}`);
  }
  for (let moment = 0; moment < horizon; moment += 1) {
    const running = variables.filter(
      ({ start, task }) => start <= moment && moment < start + task.minutes.likely,
    );
    for (const crew of work.crews) {
      const held = running.filter(
        (one) => one.crew === crew.id && one.task.needs[0]!.people.usual > 0,
      );
      if (held.length > 0) {
        rows.push(
          `${held.map((one) => term(one.task.needs[0]!.people.usual, one)).join(' ')} <= ${crew.people}`,
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
