import type { Crew, Work } from '../tasks/work.ts';

/** So many people from then on, in seconds after the start of the build; the first step is from all time. */
export type StrengthStep = { readonly from: number; readonly people: number };

/**
 * People who come (`from` is null), go (`to` is null) or go over from one crew to another. Crews by their row in
 * `work.crews`, `at` in seconds after the start of the build.
 */
export type CrewMove = {
  readonly at: number;
  readonly from: number | null;
  readonly to: number | null;
  readonly people: number;
};

/**
 * All that changes the strength of crews after the start of the build, in order of time; who comes before who goes.
 * Those of a crew who rest while the others work on go and come back.
 */
export function crewMoves({ crews }: Work): CrewMove[] {
  const rows = new Map(crews.map(({ id }, row) => [id, row]));
  const moves: CrewMove[] = [];
  for (const [row, crew] of crews.entries()) {
    let people = firstStrength(crew);
    for (const step of laterSteps(crew)) {
      const more = step.people - people;
      const at = inSeconds(step.from);
      if (more > 0) moves.push({ at, from: null, to: row, people: more });
      if (more < 0) moves.push({ at, from: row, to: null, people: -more });
      people = step.people;
    }
    for (const { from, to, people: resting } of crew.rests ?? []) {
      if (resting === undefined) continue;
      moves.push({ at: inSeconds(from), from: row, to: null, people: resting });
      moves.push({ at: inSeconds(to), from: null, to: row, people: resting });
    }
    for (const { crew: other, people: lent, from, to } of crew.lent ?? []) {
      const borrower = rows.get(other)!;
      moves.push({ at: inSeconds(from), from: row, to: borrower, people: lent });
      if (to !== undefined) {
        moves.push({ at: inSeconds(to), from: borrower, to: row, people: lent });
      }
    }
  }
  const turn = ({ from, to }: CrewMove) => (from === null ? 0 : to === null ? 2 : 1);
  return moves.sort((one, other) => one.at - other.at || turn(one) - turn(other));
}

/** How strong each crew is over time, those lent and borrowed counted where they work; in the order of `work.crews`. */
export function strengths(work: Work): StrengthStep[][] {
  const steps = work.crews.map((crew): StrengthStep[] => [
    { from: Number.NEGATIVE_INFINITY, people: firstStrength(crew) },
  ]);
  const change = (row: number | null, at: number, more: number) => {
    if (row === null) return;
    const last = steps[row]!.at(-1)!;
    if (last.from === at) steps[row]!.pop();
    steps[row]!.push({ from: at, people: last.people + more });
  };
  for (const { at, from, to, people } of crewMoves(work)) {
    change(from, at, -people);
    change(to, at, people);
  }
  return steps;
}

/** The crew with one more person for as long as there is anybody. */
export function oneStronger(crew: Crew): Crew {
  const more = (people: number) => (people > 0 ? people + 1 : 0);
  const strength = crew.strength?.map(({ from, people }) => ({ from, people: more(people) }));
  return { ...crew, people: crew.people + 1, ...(strength && { strength }) };
}

function firstStrength({ people, strength = [] }: Crew): number {
  return strength.findLast(({ from }) => from <= 0)?.people ?? people;
}

function laterSteps({ strength = [] }: Crew) {
  return strength.filter(({ from }) => from > 0);
}

function inSeconds(minutes: number): number {
  return Math.round(minutes * 60);
}
