import { strengths } from '#domain/schedule/strength.ts';
import type { Work } from '#domain/tasks/work.ts';

/** So many of a crew are at work from then to then, in minutes after the start of the build; all resting where `rest`. */
export type Stretch = {
  readonly from: number;
  readonly to: number;
  readonly people: number;
  readonly rest: boolean;
};

/**
 * How many of a crew, by its row in `work.crews`, there are for work between two moments: its strength over time with
 * those lent, borrowed and resting in turn, nobody outside its hours and in rests of the whole crew.
 */
export function strengthProfile(work: Work, row: number, start: number, end: number): Stretch[] {
  const crew = work.crews[row]!;
  const steps = strengths(work)[row]!;
  const { from: comes = Number.NEGATIVE_INFINITY, to: goes = Number.POSITIVE_INFINITY } = crew;
  const rests = (crew.rests ?? []).filter(({ people }) => people === undefined);
  const times = [
    comes,
    goes,
    ...steps.map(({ from }) => from / 60),
    ...rests.flatMap(({ from, to }) => [from, to]),
  ];
  const within = [...new Set(times)].filter((time) => time > start && time < end);
  const turns = [start, ...within.sort((one, other) => one - other), end];
  const stretches: Stretch[] = [];
  for (const [at, from] of turns.slice(0, -1).entries()) {
    const there = from >= comes && from < goes;
    const rest = there && rests.some((one) => one.from <= from && from < one.to);
    const strength = steps.findLast((step) => step.from / 60 <= from)?.people ?? 0;
    const people = there && !rest ? Math.max(0, strength) : 0;
    const last = stretches.at(-1);
    const to = turns[at + 1]!;
    if (last?.people === people && last.rest === rest) stretches.pop();
    const since = last?.people === people && last.rest === rest ? last.from : from;
    stretches.push({ from: since, to, people, rest });
  }
  return stretches;
}
