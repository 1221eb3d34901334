import { plannedSeconds } from '../../tasks/expected.ts';
import type { Work } from '../../tasks/work.ts';
import { openingTasks } from '../opening.ts';
import { finishAt, pacesOf, startAt } from '../pace.ts';
import type { Plan, PlannedTask } from '../plan.ts';
import { strengths } from '../strength.ts';

/**
 * Minutes to open when an accepted plan is kept to from now on: what has begun stands as in `fresh`, a plan made now;
 * everything else starts as early as links, the accepted hand-overs, releases and now allow, and takes what the accepted
 * plan gives it, or what is left of it. Null when it cannot be kept to: it lacks a task, a crew lacks its people, or
 * changed links go against its hand-overs.
 */
export function carriedOn(
  work: Work,
  accepted: Plan,
  fresh: Plan,
  nowMinutes: number,
): number | null {
  const begun = new Map(
    fresh.tasks.filter(({ reason }) => reason.kind === 'past').map((own) => [own.task, own]),
  );
  const anew = new Map(fresh.tasks.map((own) => [own.task, own]));
  const ahead = accepted.tasks.filter(({ task }) => anew.has(task) && !begun.has(task));
  const planned = new Set(accepted.tasks.map(({ task }) => task));
  const steps = strengths(work);
  const people = new Map(
    work.crews.map(({ id }, row) => [id, Math.max(...steps[row]!.map((step) => step.people))]),
  );
  const lacks = ({ crews }: PlannedTask) =>
    crews.some(({ crew, people: count }) => count > (people.get(crew) ?? 0));
  if (work.tasks.some(({ id }) => !planned.has(id) && !begun.has(id)) || ahead.some(lacks)) {
    return null;
  }
  const times = new Map<string, { start: number; finish: number }>(begun);
  for (const own of ahead) {
    times.set(own.task, { start: Number.NEGATIVE_INFINITY, finish: 0 });
  }
  const minutes = new Map(ahead.map((own) => [own.task, minutesLeft(own, anew.get(own.task)!)]));
  const arcs = arcsInto(work, accepted);
  const runs = runsOf(work, accepted);
  // In order of start one round nearly always does; a negative wait may take another.
  for (let rounds = 0, moved = true; moved; rounds += 1) {
    if (rounds > ahead.length) {
      return null;
    }
    moved = false;
    for (const own of ahead) {
      let start = Math.max(nowMinutes, own.release);
      for (const { from, counts, wait } of arcs.get(own.task) ?? []) {
        start = Math.max(start, (times.get(from)?.[counts] ?? 0) + wait);
      }
      const run = runs(own, start) ?? { start, finish: start + minutes.get(own.task)! };
      moved ||= run.start > times.get(own.task)!.start;
      times.set(own.task, run);
    }
  }
  return [...openingTasks(work)].reduce((last, id) => Math.max(last, times.get(id)!.finish), 0);
}

/** When a task runs that has a pace of its own, by rests, daylight and the dark; null for all others. Minutes. */
function runsOf(work: Work, { shape }: Plan) {
  const paceOf = pacesOf(work);
  const tasks = new Map(work.tasks.map((task) => [task.id, task]));
  return ({ task: id, crews, stretch, start: planned, finish }: PlannedTask, start: number) => {
    const task = tasks.get(id);
    const atWork = crews.filter(({ people }) => people > 0).map(({ crew }) => crew);
    const pace = task && finish > planned ? paceOf(task, atWork) : null;
    if (!task || !pace) {
      return null;
    }
    const seconds = plannedSeconds(task.minutes, shape, stretch);
    const begin = startAt(pace, start * 60, seconds);
    return { start: begin / 60, finish: finishAt(pace, begin, seconds) / 60 };
  };
}

/** A stopped task has only its rest to do, in the accepted plan as in the fresh one. */
function minutesLeft(accepted: PlannedTask, fresh: PlannedTask): number {
  const asPlanned = accepted.finish - accepted.start;
  const rest = ((fresh.finish - fresh.start) / fresh.stretch) * accepted.stretch;
  return Math.min(asPlanned, rest);
}

type Arc = {
  readonly from: string;
  readonly counts: 'start' | 'finish';
  readonly wait: number;
};

function arcsInto(work: Work, { handOvers }: Plan): Map<string, Arc[]> {
  const into = new Map<string, Arc[]>();
  const add = (to: string, arc: Arc) => {
    const row = into.get(to) ?? [];
    row.push(arc);
    into.set(to, row);
  };
  for (const { from, to, counts, wait } of work.links) {
    add(to, { from, counts, wait });
  }
  for (const { from, to, wait = 0 } of handOvers) {
    add(to, { from, counts: 'finish', wait });
  }
  return into;
}
