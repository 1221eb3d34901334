import { type Static, Type } from 'typebox';
import { Minutes } from '../../tasks/task.ts';
import type { Crew } from '../../tasks/work.ts';
import { byCrew, type CrewReview } from './byCrew.ts';
import type { PlayedTask } from './played.ts';
import type { Proposal } from './proposal.ts';

const strict = { additionalProperties: false } as const;

/** Planned against actual of a whole build, and what it proposes for the kit: the file that is exported. Minutes. */
export const Review = Type.Object(
  {
    format: Type.Literal('spanwright-review'),
    version: Type.Literal(1),
    build: Type.String(),
    tasks: Type.Array(
      Type.Object(
        {
          task: Type.String(),
          name: Type.String(),
          crews: Type.Array(Type.String()),
          planned: Type.Number(),
          actual: Type.Number(),
          usual: Type.Number(),
          trust: Type.Number(),
        },
        strict,
      ),
    ),
    crews: Type.Array(
      Type.Object(
        {
          crew: Type.String(),
          name: Type.String(),
          tasks: Type.Integer(),
          planned: Type.Number(),
          actual: Type.Number(),
        },
        strict,
      ),
    ),
    proposals: Type.Array(
      Type.Object(
        {
          task: Type.String(),
          name: Type.String(),
          was: Minutes,
          minutes: Minutes,
          builds: Type.Integer(),
          tasks: Type.Integer(),
        },
        strict,
      ),
    ),
  },
  strict,
);
export type Review = Static<typeof Review>;

/** The review of a build, its figures to hundredths of a minute. */
export function reviewOf(
  build: string,
  played: readonly PlayedTask[],
  crews: readonly Crew[],
  proposed: readonly Proposal[],
): Review {
  return {
    format: 'spanwright-review',
    version: 1,
    build,
    tasks: played.map((task) => ({
      ...task,
      crews: [...task.crews],
      planned: hundredths(task.planned),
      actual: hundredths(task.actual),
      usual: hundredths(task.usual),
      trust: hundredths(task.trust),
    })),
    crews: byCrew(played, crews).map(
      (crew): CrewReview => ({
        ...crew,
        planned: hundredths(crew.planned),
        actual: hundredths(crew.actual),
      }),
    ),
    proposals: proposed.map((proposal) => ({ ...proposal })),
  };
}

function hundredths(value: number): number {
  return Math.round(value * 100) / 100;
}
