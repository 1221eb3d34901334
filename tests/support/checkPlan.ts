import type { Past } from '#domain/schedule/past.ts';
import type { Plan, PlannedTask } from '#domain/schedule/plan.ts';
import type { Need, Task } from '#domain/tasks/task.ts';
import type { Crew, Work } from '#domain/tasks/work.ts';
import { checkCrossing } from './checkCrossing.ts';
import { checkLimits } from './checkLimits.ts';
import { checkTimes, doneAt } from './workClock.ts';

/** Half a second, in minutes: plans count whole seconds. */
const half = 1 / 120;

/**
 * Checks a plan against the rules alone: written apart from the planner and sharing nothing with it but types.
 * Returns one sentence for each thing wrong; none when the plan holds.
 */
export function checkPlan(
  work: Work,
  plan: Plan,
  options: { readonly crews: boolean; readonly past?: Past | undefined },
): string[] {
  const wrong: string[] = [];
  const tasks = new Map(work.tasks.map((task) => [task.id, task]));
  const past = new Map((options.past?.tasks ?? []).map((task) => [task.task, task]));
  const now = options.past?.now ?? 0;
  const planned = new Map<string, PlannedTask>();
  for (const one of plan.tasks) {
    if (planned.has(one.task)) wrong.push(`${one.task} is planned twice`);
    if (!tasks.has(one.task)) wrong.push(`${one.task} is planned and does not exist`);
    planned.set(one.task, one);
  }
  for (const { id } of work.tasks) {
    if (!planned.has(id)) wrong.push(`${id} is not planned`);
  }
  if (wrong.length > 0) return wrong;

  const settled = (id: string) => ['done', 'at-work'].includes(past.get(id)?.status ?? '');
  for (const task of work.tasks) {
    const own = planned.get(task.id) as PlannedTask;
    for (const key of ['start', 'finish', 'release'] as const) {
      const seconds = own[key] * 60;
      if (!Number.isFinite(seconds) || Math.abs(seconds - Math.round(seconds)) > 1e-6) {
        wrong.push(`${task.id}: ${key} ${own[key]} is not in whole seconds`);
      }
    }
    const before = past.get(task.id);
    if (before && settled(task.id)) {
      wrong.push(...checkSettled(work, task, own, before, now, plan.shape));
      continue;
    }
    if (own.start < Math.max(0, now) - 1e-9)
      wrong.push(`${task.id} starts at ${own.start}, before now`);
    if (own.start < own.release - 1e-9) wrong.push(`${task.id} starts before its release`);
    wrong.push(...checkPeople(work, task, own, options.crews));
    const left = before?.status === 'stopped' ? 1 - (before.part ?? 0) : 1;
    const minutes = expected(task, plan.shape) * own.stretch * left;
    const whole = minutes > 0 ? Math.max(1, Math.round(minutes * 60)) / 60 : 0;
    const done = doneAt(work, task, own, own.start, whole);
    if (own.finish < done - 1e-6 || own.finish > done + half * 2 - 1e-9) {
      wrong.push(`${task.id} lasts from ${own.start} to ${own.finish}, not to ${done}`);
    }
    wrong.push(...checkTimes(work, task, own, now));
    for (const load of work.loads.filter(({ id }) => task.loads.includes(id))) {
      if (own.start < load.arrives - 1e-9) wrong.push(`${task.id} starts before ${load.id} is in`);
    }
  }

  for (const { from, to, counts, wait } of work.links) {
    const one = planned.get(from) as PlannedTask;
    const other = planned.get(to) as PlannedTask;
    const bound = (counts === 'start' ? one.start : one.finish) + wait;
    if (!settled(to) && other.start < bound - half - 1e-9) {
      wrong.push(`${to} starts at ${other.start}, before ${bound} as ${from} wants`);
    }
  }
  for (const { from, to, wait = 0 } of plan.handOvers) {
    const one = planned.get(from);
    const other = planned.get(to);
    if (!one || !other || other.start < one.finish + wait - 1e-9) {
      wrong.push(`${to} starts before ${from} hands over`);
    }
  }
  wrong.push(...checkLimits(work, plan, options));
  // Those who work over their strength in the past may be anywhere.
  if (options.crews && !options.past) wrong.push(...checkCrossing(work, plan));
  wrong.push(...checkOpening(work, plan, planned));
  for (const own of plan.tasks) {
    if (!reasonHolds(work, plan, planned, own, now)) {
      wrong.push(
        `${own.task} starts at ${own.start}, and not because of ${JSON.stringify(own.reason)}`,
      );
    }
  }
  return wrong;
}

/** True when what the reason names is there and ends just when the task starts. */
function reasonHolds(
  work: Work,
  plan: Plan,
  planned: ReadonlyMap<string, PlannedTask>,
  own: PlannedTask,
  now: number,
): boolean {
  const { kind, task, of } = own.reason;
  const same = (minutes: number | undefined) =>
    minutes !== undefined && Math.abs(minutes - own.start) <= half * 2 + 1e-9;
  const before = planned.get(task ?? '');
  switch (kind) {
    case 'start':
      return own.start === 0;
    case 'now':
      return same(now);
    case 'past':
      return true;
    case 'load':
      return same(work.loads.find(({ id }) => id === of)?.arrives);
    case 'rest':
      return work.crews.some(({ id, rests = [] }) => id === of && rests.some(({ to }) => same(to)));
    case 'light':
      return work.dark?.spells.some(({ to }) => same(to)) ?? false;
    case 'fixed':
      return same(work.tasks.find(({ id }) => id === own.task)?.fixed?.start);
    case 'window': {
      const crew = work.crews.find(({ id }) => id === of);
      const lent = work.crews.flatMap((each) => {
        const concerned = each.id === of ? (each.lent ?? []) : [];
        const borrowed = (each.lent ?? []).filter((one) => one.crew === of);
        return [...concerned.map(({ to }) => to), ...borrowed.map(({ from }) => from)];
      });
      return [crew?.from, ...(crew?.strength ?? []).map(({ from }) => from), ...lent].some(same);
    }
    case 'link':
      return work.links.some(
        ({ from, to, counts, wait }) =>
          from === task &&
          to === own.task &&
          same(((counts === 'start' ? before?.start : before?.finish) ?? Number.NaN) + wait),
      );
    case 'crossing': {
      const arc = plan.handOvers.find(
        (each) => each.from === task && each.to === own.task && each.of === of && each.wait,
      );
      return arc !== undefined && same((before?.finish ?? Number.NaN) + (arc.wait ?? 0));
    }
    case 'crew':
    case 'zone':
    case 'equipment':
      return (
        same(before?.finish) &&
        plan.handOvers.some(
          (arc) => arc.from === task && arc.to === own.task && arc.kind === kind && arc.of === of,
        )
      );
  }
}

function expected(task: Task, shape: Plan['shape']): number {
  const { quick, likely, slow } = task.minutes;
  return shape === 'pert' ? (quick + 4 * likely + slow) / 6 : (quick + likely + slow) / 3;
}

function checkSettled(
  work: Work,
  task: Task,
  own: PlannedTask,
  before: Past['tasks'][number],
  now: number,
  shape: Plan['shape'],
): string[] {
  const wrong: string[] = [];
  if (Math.abs(own.start - before.start) > half)
    wrong.push(`${task.id} did not start at ${own.start}`);
  if (own.reason.kind !== 'past')
    wrong.push(`${task.id} has begun, and its reason does not say so`);
  if (before.status === 'done' && Math.abs(own.finish - (before.finish ?? Number.NaN)) > half) {
    wrong.push(`${task.id} did not finish at ${own.finish}`);
  }
  if (before.status === 'at-work') {
    const minutes = expected(task, shape) * own.stretch;
    const run = (from: number, left: number) => doneAt(work, task, own, from, left, true);
    const end = before.part
      ? run(now, minutes * (1 - before.part))
      : Math.max(now, run(before.start, minutes));
    // Two roundings to whole seconds, the first of them drawn out in the dark.
    if (Math.abs(own.finish - end) > (2 + (work.dark?.factor ?? 1)) * half) {
      wrong.push(`${task.id} at work should run to ${end}, not ${own.finish}`);
    }
  }
  return wrong;
}

function checkPeople(work: Work, task: Task, own: PlannedTask, crews: boolean): string[] {
  if (!crews) return own.crews.length > 0 ? [`${task.id} has crews in a plan without crews`] : [];
  const wrong: string[] = [];
  const names = own.crews.map(({ crew }) => crew);
  if (new Set(names).size < names.length) wrong.push(`${task.id} has one crew twice`);
  const wanting = task.needs.filter((need) => need.people.usual > 0);
  const working = own.crews.filter(({ people }) => people > 0);
  if (!matches(work, wanting, working)) {
    wrong.push(
      `${task.id} is manned by ${JSON.stringify(working)}, wants ${JSON.stringify(wanting)}`,
    );
  }
  for (const { crew } of working) {
    const { from = 0, to = Number.POSITIVE_INFINITY } =
      work.crews.find(({ id }) => id === crew) ?? {};
    if (own.start < from - 1e-9 || own.finish > to + 1e-9) {
      wrong.push(
        `${task.id} runs ${own.start} to ${own.finish}, ${crew} is there ${from} to ${to}`,
      );
    }
  }
  // The pace is that of the need which is shortest of people; any way of matching that gives it will do.
  const paces = wanting.length === 0 ? [1] : stretches(work, wanting, working);
  if (!paces.some((pace) => Math.abs(pace - own.stretch) < 1e-9)) {
    wrong.push(`${task.id} is stretched ${own.stretch}, its people make it ${paces}`);
  }
  return wrong;
}

type Working = readonly { readonly crew: string; readonly people: number }[];

function able({ skills, skilled = [] }: Crew, skill: string): number {
  if (skills.includes(skill)) return Number.POSITIVE_INFINITY;
  return skilled.find((one) => one.skill === skill)?.people ?? 0;
}

function serves(work: Work, need: Need, { crew, people }: Working[number]): boolean {
  const known = work.crews.find(({ id }) => id === crew);
  return (
    known !== undefined &&
    (need.anyOf.length === 0 || need.anyOf.includes(crew)) &&
    (need.skill === undefined || able(known, need.skill) >= people) &&
    (need.with ?? []).every(
      (some) => able(known, some.skill) >= some.people && people >= some.people,
    ) &&
    people >= need.people.least &&
    people <= need.people.most
  );
}

function matches(work: Work, needs: readonly Need[], working: Working): boolean {
  return needs.length === working.length && stretches(work, needs, working).length > 0;
}

/** The stretch of every way to match needs with crews one to one. */
function stretches(work: Work, needs: readonly Need[], working: Working): number[] {
  const [need, ...others] = needs;
  if (!need) return [0];
  return working.flatMap((one, at) => {
    if (!serves(work, need, one)) return [];
    const rest = stretches(
      work,
      others,
      working.filter((_, other) => other !== at),
    );
    return rest.map((stretch) => Math.max(stretch, need.people.usual / one.people));
  });
}

function checkOpening(work: Work, plan: Plan, planned: ReadonlyMap<string, PlannedTask>): string[] {
  const opens = work.tasks.filter((task) => task.opens);
  const holds = work.tasks.filter((task) => task.hold);
  const group = opens.length > 0 ? opens : holds.length > 0 ? holds : work.tasks;
  const last = Math.max(...group.map(({ id }) => planned.get(id)?.finish ?? Number.NaN));
  const wrong: string[] = [];
  if (plan.minutesToOpen !== last) wrong.push(`opens at ${last}, not ${plan.minutesToOpen}`);
  if (planned.get(plan.opening)?.finish !== last || !group.some(({ id }) => id === plan.opening)) {
    wrong.push(`${plan.opening} is not what opens`);
  }
  if (plan.lowerBound > plan.minutesToOpen + 1e-9) {
    wrong.push(`opens at ${plan.minutesToOpen}, before its bound ${plan.lowerBound}`);
  }
  return wrong;
}
