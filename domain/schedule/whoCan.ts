import type { Refusal } from '../refusal.ts';
import { bad, good, type Result } from '../result.ts';
import type { Need, Skilled, Task } from '../tasks/task.ts';
import type { Crew } from '../tasks/work.ts';
import type { Manning } from './manning.ts';
import { crewTooSmall, noCrewCan } from './whyNoWay.ts';

/** What is to be manned: a task of which `left` (0 to 1) is still to be done. `now` in seconds. */
export type Wanted = {
  readonly manning: Manning;
  readonly task: Task;
  readonly left: number;
  readonly now: number;
};

/** Stands for a crew where nobody is needed. */
export const nobody = -1;

export function ableCrews({ manning, task, now }: Wanted, need: Need): Result<number[], Refusal> {
  const { work } = manning;
  const { anyOf, skill } = need;
  if (need.people.usual === 0) {
    const named = work.crews.findIndex(({ id }) => anyOf.includes(id));
    return good([named === -1 ? nobody : named]);
  }
  const rows = work.crews.map((_, row) => row);
  const meant = rows.filter((row) => isMeant(work.crews[row]!, anyOf));
  const least = leastOf(need);
  const able = meant.filter((row) => {
    const crew = work.crews[row]!;
    return (
      (skill === undefined || ableAt(crew, skill) >= least) &&
      (need.with ?? []).every((some) => ableAt(crew, some.skill) >= some.people)
    );
  });
  if (able.length === 0) {
    const wants = anyOf.length > 0 ? `wants ${anyOf.join(' or ')}` : 'wants any crew';
    const all = skill === undefined ? [] : [`with the skill ${skill}`];
    const some = (need.with ?? []).map(
      (one) => `with ${one.people} who have the skill ${one.skill}`,
    );
    return bad(noCrewCan(task, [wants, ...all, ...some].join(' ')));
  }
  const most = (row: number) => Math.max(...levels(manning, row, now));
  const enough = able.filter((row) => most(row) >= least);
  if (enough.length === 0) {
    const largest = able.reduce((one, other) => (most(other) > most(one) ? other : one));
    return bad(crewTooSmall(task, work.crews[largest]!, most(largest), least));
  }
  return good(enough);
}

/** The fewest people with whom the need is met. */
export function leastOf({ people, with: some = [] }: Need): number {
  return Math.max(1, people.least, ...some.map((one) => one.people));
}

/** How many people of the crew have the skill. */
function ableAt({ skills, skilled = [] }: Crew, skill: string): number {
  const some = skilled.find((one) => one.skill === skill)?.people ?? 0;
  return skills.includes(skill) ? Number.POSITIVE_INFINITY : some;
}

/**
 * What a need asks of a crew that only some of its people can do. `people` are those it takes from the crew.
 */
export function skilledOf(need: Need, { skills }: Crew, people: number): Skilled[] {
  const all = need.skill === undefined ? [] : [{ skill: need.skill, people }];
  return [...(need.with ?? []), ...all].filter(
    ({ skill }) => people > 0 && !skills.includes(skill),
  );
}

/** Attached people (medic, boat, drivers) do only what names them. */
function isMeant(crew: Crew, anyOf: readonly string[]): boolean {
  return anyOf.length === 0 ? !crew.attached : anyOf.includes(crew.id);
}

/** The most people with whom the crew can ever meet the need. */
export function mostFrom({ manning, now }: Wanted, { people, skill }: Need, crew: number): number {
  if (crew === nobody || people.usual === 0) {
    return 0;
  }
  const able = skill === undefined ? people.most : ableAt(manning.work.crews[crew]!, skill);
  return Math.min(people.most, able, Math.max(...levels(manning, crew, now)));
}

/** The usual people with whom the crew can meet the need, or all it has of them, at each strength it will have. */
export function peopleFrom({ manning, now }: Wanted, need: Need, crew: number): number[] {
  const { people, skill } = need;
  if (crew === nobody || people.usual === 0) {
    return [0];
  }
  const most =
    skill === undefined
      ? people.usual
      : Math.min(people.usual, ableAt(manning.work.crews[crew]!, skill));
  const counts = levels(manning, crew, now).map((strong) => Math.min(most, strong));
  return [...new Set(counts)]
    .filter((count) => count >= leastOf(need))
    .sort((one, other) => other - one);
}

/** How strong a crew is from now on. */
function levels({ strengths }: Manning, crew: number, now: number): number[] {
  const steps = strengths[crew]!;
  return steps
    .filter((_, at) => (steps[at + 1]?.from ?? Number.POSITIVE_INFINITY) > now)
    .map(({ people }) => people);
}
