import type { CrewState } from './crewState.ts';
import { byMoment } from './instants.ts';

/** A crew of which nothing has been told: as strong as the order of work says since `entry`. */
export function freshCrew(people: number, entry: number): CrewState {
  const planned = { people, entry };
  return { fit: people, hurt: 0, outOfWork: 0, toldAt: null, planned, tells: [] };
}

/**
 * The strength of a crew, derived anew from its live tells. The count that was made last holds, whatever order counts
 * arrive in; each person told hurt and out of work since then is one less. Counts from before the order of work last
 * changed the number of its people are superseded.
 */
export function crewStanding(crew: CrewState): CrewState {
  const { planned, tells } = crew;
  const since = tells.filter(({ entry }) => entry > planned.entry);
  const count = since
    .filter(({ kind }) => kind === 'strength')
    .toSorted(byMoment)
    .at(-1);
  const out = since.filter(
    ({ kind, outOfWork, entry, at }) =>
      kind === 'hurt' && outOfWork && (!count || isAfter({ entry, at }, count)),
  ).length;
  return {
    ...crew,
    fit: Math.max(0, (count?.fit ?? planned.people) - out),
    hurt: tells.filter(({ kind }) => kind === 'hurt').length,
    outOfWork: out,
    toldAt: count?.at ?? null,
  };
}

type Moment = { readonly entry: number; readonly at: string };

function isAfter(one: Moment, other: Moment): boolean {
  const apart = Date.parse(one.at) - Date.parse(other.at);
  return apart > 0 || (apart === 0 && one.entry > other.entry);
}
