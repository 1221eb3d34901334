import type { Plan, PlannedTask } from '#domain/schedule/plan.ts';

/** A task that another plan starts at another time or gives to other people. Minutes after the start of the build. */
export type Move = {
  readonly task: string;
  /** Null for a task that the plan in force does not have. */
  readonly before: PlannedTask | null;
  readonly after: PlannedTask;
  /** Minutes later; negative is earlier. */
  readonly shift: number;
};

/** Less than this is no move that anybody on site would notice. */
const noticed = 1;

/**
 * The tasks of `after` that move by a minute or more, change crews or people, or are new, largest move first. What has
 * begun does not move, whatever the figures say.
 */
export function movesOf(
  before: Plan | null,
  after: Plan,
  hasBegun: (task: string) => boolean,
): Move[] {
  const known = new Map(before?.tasks.map((one) => [one.task, one]));
  return after.tasks
    .filter(({ task }) => !hasBegun(task))
    .map((one): Move => {
      const old = known.get(one.task) ?? null;
      return { task: one.task, before: old, after: one, shift: old ? one.start - old.start : 0 };
    })
    .filter(
      ({ before: old, after: one, shift }) =>
        old === null || Math.abs(shift) >= noticed || crewsKey(old) !== crewsKey(one),
    )
    .toSorted((a, b) => Math.abs(b.shift) - Math.abs(a.shift) || a.after.start - b.after.start);
}

/** Crews of a task that have other people in another plan: 0 where one of the plans has none of them there. */
export function crewChanges(
  before: PlannedTask,
  after: PlannedTask,
): { readonly crew: string; readonly was: number; readonly is: number }[] {
  const people = ({ crews }: PlannedTask, crew: string): number =>
    crews.find((one) => one.crew === crew)?.people ?? 0;
  const crews = new Set([...after.crews, ...before.crews].map(({ crew }) => crew));
  return [...crews]
    .map((crew) => ({ crew, was: people(before, crew), is: people(after, crew) }))
    .filter(({ was, is }) => was !== is);
}

function crewsKey({ crews }: PlannedTask): string {
  return crews
    .map(({ crew, people }) => `${crew} ${people}`)
    .sort()
    .join(', ');
}
