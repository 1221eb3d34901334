import type { Past } from '#domain/schedule/past.ts';
import type { Plan, PlannedTask } from '#domain/schedule/plan.ts';
import type { Work } from '#domain/tasks/work.ts';

/**
 * Checks only who and what is held at once: people of crews, room of zones, keep-off, equipment. Times may be any.
 * Written apart from the planner.
 */
export function checkLimits(
  work: Work,
  plan: Plan,
  options: { readonly crews: boolean; readonly past?: Past | undefined },
): string[] {
  const past = new Map((options.past?.tasks ?? []).map(({ task, status }) => [task, status]));
  const settled = (id: string) => ['done', 'at-work'].includes(past.get(id) ?? '');
  return [
    ...checkCrews(work, plan, options.crews, settled),
    ...checkZones(work, plan, settled),
    ...checkEquipment(work, plan, settled),
    ...(options.crews ? checkSkills(work, plan, settled) : []),
  ];
}

type Hold = {
  readonly task: string;
  readonly start: number;
  readonly finish: number;
  readonly amount: number;
};

/** Goes through time and tells the first moment at which more is held than there is, apart from what the past holds. */
function sweep(
  holds: readonly Hold[],
  there: (time: number) => number,
  settled: (id: string) => boolean,
  changes: readonly number[] = [],
): string | null {
  const starts = holds.filter(({ task }) => !settled(task)).map(({ start }) => start);
  for (const start of [...starts, ...changes]) {
    const most = there(start);
    const running = holds.filter((one) => one.start <= start + 1e-9 && one.finish > start + 1e-9);
    const sum = running.reduce((total, { amount }) => total + amount, 0);
    if (sum > most && running.some(({ task }) => !settled(task))) {
      return `${sum} of ${most} at ${start}: ${running.map((one) => one.task).join(', ')}`;
    }
  }
  return null;
}

/** Times at which the strength of some crew changes, to the second. */
export function changesOf({ crews }: Work): number[] {
  return crews
    .flatMap(({ strength = [], lent = [], rests = [] }) => [
      ...rests.filter(({ people }) => people).flatMap(({ from, to }) => [from, to]),
      ...strength.map(({ from }) => from),
      ...lent.flatMap(({ from, to }) => (to === undefined ? [from] : [from, to])),
    ])
    .map(inSeconds);
}

function inSeconds(minutes: number): number {
  return Math.round(minutes * 60) / 60;
}

/** How many people a crew has at that time: its own by its last step, less those lent or resting, more those borrowed. */
export function there({ crews }: Work, id: string, time: number): number {
  const since = (minutes: number) => inSeconds(minutes) <= time + 1e-9;
  let people = 0;
  for (const crew of crews) {
    if (crew.id === id) {
      people += (crew.strength ?? []).reduce(
        (last, step) => (since(step.from) ? step.people : last),
        crew.people,
      );
      for (const rest of crew.rests ?? []) {
        if (since(rest.from) && !since(rest.to)) people -= rest.people ?? 0;
      }
    }
    for (const lent of crew.lent ?? []) {
      const away = since(lent.from) && !(lent.to !== undefined && since(lent.to));
      if (away && crew.id === id) people -= lent.people;
      if (away && lent.crew === id) people += lent.people;
    }
  }
  return people;
}

function checkCrews(
  work: Work,
  plan: Plan,
  crews: boolean,
  settled: (id: string) => boolean,
): string[] {
  if (!crews) return [];
  return work.crews.flatMap((crew) => {
    const holds = plan.tasks.flatMap(({ task, start, finish, crews: own }) =>
      own
        .filter((one) => one.crew === crew.id && finish > start && one.people > 0)
        .map((one) => ({ task, start, finish, amount: one.people })),
    );
    const over = sweep(holds, (time) => there(work, crew.id, time), settled, changesOf(work));
    return over ? [`${crew.id} is asked for ${over}`] : [];
  });
}

function checkZones(work: Work, plan: Plan, settled: (id: string) => boolean): string[] {
  const tasks = new Map(work.tasks.map((task) => [task.id, task]));
  const wrong: string[] = [];
  for (const zone of work.zones) {
    const inside = plan.tasks.filter(
      ({ task, start, finish }) => finish > start && tasks.get(task)?.zones.includes(zone.id),
    );
    const crowd = ({ task, crews, stretch }: PlannedTask): number => {
      if (crews.length > 0) return crews.reduce((sum, { people }) => sum + people, 0);
      const needs = tasks.get(task)?.needs ?? [];
      const usual = needs.reduce((sum, need) => sum + need.people.usual, 0);
      // Without crews a tight zone may have sent people away; with one need the stretch tells how many are left.
      return needs.length === 1 ? Math.round(usual / stretch) : usual;
    };
    const holds = inside.map((one) => ({ ...one, amount: crowd(one) }));
    const over =
      zone.room === undefined
        ? null
        : sweep(
            holds.filter(({ amount }) => amount > 0),
            () => zone.room as number,
            settled,
          );
    if (over) wrong.push(`${zone.id} is asked for ${over}`);
    for (const one of inside.filter(({ task }) => tasks.get(task)?.keepOff)) {
      for (const other of holds) {
        const together = other.start < one.finish - 1e-9 && one.start < other.finish - 1e-9;
        const shut = other.amount > 0 || tasks.get(other.task)?.keepOff;
        if (
          other.task !== one.task &&
          together &&
          shut &&
          !(settled(one.task) && settled(other.task))
        ) {
          wrong.push(`${other.task} is in ${zone.id} while ${one.task} keeps it off`);
        }
      }
    }
  }
  return wrong;
}

function checkEquipment(work: Work, plan: Plan, settled: (id: string) => boolean): string[] {
  return (work.equipment ?? []).flatMap(({ id, count }) => {
    const holds = plan.tasks
      .filter(({ start, finish }) => finish > start)
      .flatMap(({ task, start, finish }) => {
        const held = work.tasks.find((one) => one.id === task)?.equipment ?? [];
        const own = held.find((one) => one.id === id);
        return own ? [{ task, start, finish, amount: own.count }] : [];
      });
    const over = sweep(holds, () => count, settled);
    return over ? [`${id} is asked for ${over}`] : [];
  });
}

/** Of those in a crew who have a skill, tasks at once ask for no more than there are. Crews stand in the order of needs. */
function checkSkills(work: Work, plan: Plan, settled: (id: string) => boolean): string[] {
  return work.crews.flatMap(({ id, skilled = [], skills }) =>
    skilled
      .filter(({ skill }) => !skills.includes(skill))
      .flatMap(({ skill, people: most }) => {
        const holds = plan.tasks.flatMap(({ task, start, finish, crews }) => {
          const needs = work.tasks.find((one) => one.id === task)?.needs ?? [];
          const wanting = needs.filter(({ people }) => people.usual > 0);
          const working = crews.filter(({ people }) => people > 0);
          return working.flatMap(({ crew, people }, at) => {
            const need = wanting[at];
            const some = need?.with?.find((one) => one.skill === skill)?.people ?? 0;
            const amount = Math.max(some, need?.skill === skill ? people : 0);
            const counts = crew === id && amount > 0 && finish > start;
            return counts ? [{ task, start, finish, amount }] : [];
          });
        });
        const over = sweep(holds, () => most, settled);
        return over ? [`${skill} of ${id} is asked for ${over}`] : [];
      }),
  );
}
