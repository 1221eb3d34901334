import type { BuildState } from '#domain/progress/state.ts';
import { changedAsTold, crewSinceTold, workAsTold } from '#domain/progress/views/asTold.ts';
import { type Change, changedCrew } from '#domain/tasks/change.ts';
import type { Crew, Work } from '#domain/tasks/work.ts';

/** A crew with the changes gathered but those of its hours, as many people as the plan has. Null when there is none. */
export function crewBefore(state: BuildState, changes: readonly Change[], id: string): Crew | null {
  let crew = state.work.crews.find((one) => one.id === id);
  for (const change of changes) {
    if (change.kind === 'crew' && change.crew.id === id) crew = change.crew;
    if (change.kind === 'crew-name' && change.crew === id && crew) crew = changedCrew(crew, change);
  }
  return crew ? crewSinceTold(state, crew) : null;
}

/** The crew with what is gathered of its hours too. */
export function withHours(crew: Crew, changes: readonly Change[]): Crew {
  const own = changes.find((one) => one.kind === 'crew-hours' && one.crew === crew.id);
  return own?.kind === 'crew-hours' ? changedCrew(crew, own) : crew;
}

/**
 * The order of work as told with the changes, also where they do not fit, so that one sees why: then with what they say
 * of crews alone.
 */
export function workTried(state: BuildState, changes: readonly Change[]): Work {
  const changed = changedAsTold(state, changes);
  if (changed.ok) return changed.value;
  const told = workAsTold(state);
  const ids = new Set(told.crews.map(({ id }) => id));
  const added = changes.flatMap((one) =>
    one.kind === 'crew' && !ids.has(one.crew.id) ? [one.crew] : [],
  );
  const tried = [...told.crews.map((crew) => withHours(crew, changes)), ...added];
  for (const { id } of added) ids.add(id);
  const crews = tried.map(({ lent, ...crew }) => ({
    ...crew,
    ...(lent && { lent: lent.filter((one) => ids.has(one.crew)) }),
  }));
  return { ...told, crews };
}

/** When the last of what is known of the crews is over, and the bridge open; an hour at the least. In minutes. */
export function lastMinute({ crews }: Work, opening: number): number {
  const times = crews.flatMap(({ from = 0, to = 0, rests = [], lent = [], strength = [] }) => [
    from,
    to,
    ...rests.map((rest) => rest.to),
    ...lent.map((one) => one.to ?? one.from),
    ...strength.map((step) => step.from),
  ]);
  return Math.max(60, opening, ...times) * 1.02;
}
