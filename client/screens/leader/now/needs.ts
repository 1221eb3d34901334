import { minutesBetween } from '#domain/progress/instants.ts';
import { plannedTask } from '#domain/progress/plannedCrews.ts';
import { isAtWork } from '#domain/progress/standing.ts';
import type { BuildState, Event } from '#domain/progress/state.ts';
import { workAsTold } from '#domain/progress/views/asTold.ts';
import { holdUps } from '#domain/progress/views/holdUps.ts';
import { crewLabel, inWords, taskLabel } from '#domain/progress/words.ts';
import { strengths } from '#domain/schedule/strength.ts';
import type { Task } from '#domain/tasks/task.ts';
import { atMinute, clock } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';

/** One thing that wants the leader, and what the leader can do about it. */
export type Need = {
  readonly key: string;
  readonly sentence: string;
  readonly task?: string;
  /** Loud: a rule was broken, somebody was hurt, or two tells contradict each other. */
  readonly grave: boolean;
  readonly can:
    | 'settle'
    | 'seen'
    | 'plan'
    | 'crews'
    | 'ground'
    | 'load'
    | 'lend'
    | 'links'
    | 'look';
};

/** Reports that stay until the leader has seen them; the rest goes when its cause does. */
const toBeSeen: ReadonlySet<Event['kind']> = new Set(['breach', 'conceded', 'hurt', 'near-miss']);

/**
 * What needs the leader now (ISO 8601 UTC), the gravest first: broken rules, contradictions, people hurt, holds that
 * failed or lapsed, work stopped or late, crews weaker than planned, what is missing before anything can start, what
 * comes first. `seen` holds the keys that the leader has taken note of. A halt is shown by itself, above everything.
 */
export function needsOf(state: BuildState, now: string, seen: ReadonlySet<string>): Need[] {
  const reports = state.events
    .filter(({ kind }) => toBeSeen.has(kind))
    .map(reportNeed)
    .filter(({ key }) => !seen.has(key))
    .reverse();
  return [
    ...reports.filter(({ key }) => key.startsWith('breach')),
    ...disputes(state),
    ...reports.filter(({ key }) => !key.startsWith('breach')),
    ...held(state, now),
    ...flagged(state),
    ...weakCrews(state, now, seen),
    ...ownWork(state, seen),
    ...missing(state),
    ...notBegun(state, now, seen),
  ];
}

function reportNeed({ kind, entry, sentence, task }: Event): Need {
  return {
    key: `${kind} ${entry} ${sentence}`,
    sentence: kind === 'breach' ? words.said.breach(sentence) : sentence,
    grave: true,
    can: 'seen',
    ...(task && { task }),
  };
}

function disputes(state: BuildState): Need[] {
  return state.work.tasks
    .filter(({ id }) => state.tasks[id]?.disputed)
    .map(({ id }) => ({
      key: `disputed ${id}`,
      sentence: words.leader.disputed(taskLabel(state, id)),
      task: id,
      grave: true,
      can: 'settle',
    }));
}

function held(state: BuildState, now: string): Need[] {
  return holdUps({ ...state, halt: null }, now)
    .filter(({ task }) => task === undefined || !state.tasks[task]?.disputed)
    .map(({ sentence, task, load }) => ({
      key: `held ${task ?? load ?? ''} ${sentence}`,
      sentence,
      grave: false,
      can: load === undefined ? 'look' : 'load',
      ...(task && { task }),
    }));
}

function flagged(state: BuildState): Need[] {
  return state.work.tasks
    .filter(({ id }) => state.tasks[id]?.flagged)
    .map(({ id }) => {
      const under = inWords(
        (state.tasks[id]?.flaggedFor ?? []).map((one) => taskLabel(state, one)),
      );
      const sentence = words.leader.flagged(taskLabel(state, id), under);
      return { key: `flagged ${id}`, sentence, task: id, grave: false, can: 'look' };
    });
}

/**
 * Crews that have fewer fit people from now (ISO 8601 UTC) on, lent and borrowed counted, than a task still to come
 * counts on.
 */
export function weakCrews(state: BuildState, now: string, seen: ReadonlySet<string>): Need[] {
  const most = mostPeople(state, now);
  const wanted = new Map<string, number>();
  for (const { task, crews } of state.plan?.tasks ?? []) {
    if (state.tasks[task]?.status === 'done') continue;
    for (const { crew, people } of crews) {
      wanted.set(crew, Math.max(people, wanted.get(crew) ?? 0));
    }
  }
  return [...wanted]
    .map(([crew, planned]) => ({ crew, planned, fit: most.get(crew) ?? planned }))
    .filter(({ planned, fit }) => fit < planned)
    .map(({ crew, planned, fit }): Need => {
      const key = `weak ${crew} ${fit} ${planned}`;
      const name = crewLabel(state, crew);
      // The crew's own line says how many are fit: where people are lent, this is another number and says why.
      const has =
        fit === state.crews[crew]?.fit ? words.leader.fit(fit) : words.leader.withLent(fit);
      const stuck = state.work.tasks.find(
        (task) => isToPlan(state, task) && leastOf(task, crew) > fit,
      );
      if (!stuck) {
        return { key, sentence: words.leader.weak(name, has, planned), grave: false, can: 'plan' };
      }
      const least = leastOf(stuck, crew);
      const sentence = words.leader.tooWeak(name, has, taskLabel(state, stuck.id), least);
      return { key, sentence, grave: false, can: 'lend' };
    })
    .filter(({ key }) => !seen.has(key));
}

/** The most people that each crew has at any one time from now on. */
function mostPeople(state: BuildState, now: string): ReadonlyMap<string, number> {
  const work = workAsTold(state);
  const second = 60 * minutesBetween(state.start, now);
  const steps = strengths(work);
  return new Map(
    work.crews.map(({ id }, row) => {
      const ahead = (steps[row] ?? []).filter(
        (_, at, all) => (all[at + 1]?.from ?? Number.POSITIVE_INFINITY) > second,
      );
      return [id, Math.max(0, ...ahead.map(({ people }) => people))];
    }),
  );
}

/** Whether a plan made now would give it people: what is at work goes on with those it has. */
function isToPlan({ tasks }: BuildState, { id }: Task): boolean {
  const status = tasks[id]?.status;
  return status !== 'done' && status !== 'at-work';
}

/** Least people that a task takes of a crew which alone can give them; 0 where others can, or none are needed. */
function leastOf({ needs }: Task, crew: string): number {
  const own = needs.filter(({ anyOf }) => anyOf.length === 1 && anyOf[0] === crew);
  return Math.max(0, ...own.map(({ people }) => people.least));
}

function ownWork(state: BuildState, seen: ReadonlySet<string>): Need[] {
  return state.work.tasks
    .filter(({ id }) => state.tasks[id]?.ownWork)
    .map(({ id }): Need => {
      const sentence = words.leader.ownWork(taskLabel(state, id));
      const entry = state.tasks[id]?.inspections.at(-1)?.entry;
      return { key: `own ${id} ${entry}`, sentence, task: id, grave: false, can: 'seen' };
    })
    .filter(({ key }) => !seen.has(key));
}

function missing({ work, plan, tasks }: BuildState): Need[] {
  if (work.tasks.length === 0) {
    return [{ key: 'no work', sentence: words.leader.noWork, grave: false, can: 'ground' }];
  }
  if (work.crews.length === 0) {
    return [{ key: 'no crews', sentence: words.leader.noCrews, grave: false, can: 'crews' }];
  }
  const unplanned =
    plan === null || work.tasks.some(({ id }) => !plannedTask(plan, id) && tasks[id]);
  return unplanned
    ? [{ key: 'no plan', sentence: words.leader.noPlan, grave: false, can: 'plan' }]
    : [];
}

/** With a plan and nothing begun: what comes first and when, and that every chief needs a way in. */
function notBegun(state: BuildState, now: string, seen: ReadonlySet<string>): Need[] {
  const { plan, tasks, start, zone } = state;
  const begun = Object.values(tasks).some((one) => one.status !== 'to-come' || isAtWork(one));
  const first = plan?.tasks.toSorted((a, b) => a.start - b.start)[0];
  if (!first || begun) return [];
  const at = clock(atMinute(start, first.start), zone, now);
  const needs: Need[] = [
    { key: 'links', sentence: words.leader.handOut, grave: false, can: 'links' },
    {
      key: 'not begun',
      sentence: words.leader.notBegun(taskLabel(state, first.task), at),
      task: first.task,
      grave: false,
      can: 'look',
    },
  ];
  return needs.filter(({ key }) => !seen.has(key));
}
