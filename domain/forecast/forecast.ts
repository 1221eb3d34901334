import { type Static, Type } from 'typebox';

export const Shape = Type.Union([Type.Literal('pert'), Type.Literal('triangular')]);
export type Shape = Static<typeof Shape>;

/** When one task is done: the same quantiles as for the opening. */
export const Milestone = Type.Object(
  {
    task: Type.String(),
    p10: Type.Number(),
    p50: Type.Number(),
    p80: Type.Number(),
    p90: Type.Number(),
  },
  { additionalProperties: false },
);
export type Milestone = Static<typeof Milestone>;

/** The spread of times to open. All times are minutes after the start of the build. */
export const Forecast = Type.Object(
  {
    runs: Type.Integer({ minimum: 1 }),
    seed: Type.Integer(),
    shape: Shape,
    mean: Type.Number(),
    sd: Type.Number(),
    p10: Type.Number(),
    p50: Type.Number(),
    p80: Type.Number(),
    p90: Type.Number(),
    /** Chance to open by the time asked for; null when none was asked. */
    chanceBy: Type.Union([
      Type.Object(
        { minutes: Type.Number(), chance: Type.Number() },
        { additionalProperties: false },
      ),
      Type.Null(),
    ]),
    /** Twenty equally likely openings: the quantiles at 2.5 %, 7.5 % ... 97.5 %. */
    openings: Type.Array(Type.Number()),
    /** The 99 quantiles at 1 %, 2 % ... 99 %, so that any confidence a leader may choose can be read off. */
    percentiles: Type.Array(Type.Number()),
    /** How often (0 to 1) each task was on the chain that set the opening. */
    onChain: Type.Array(Type.Object({ task: Type.String(), share: Type.Number() })),
    /** How often each crew had a task that is not done on that chain; only where a forecast was asked with doubt. */
    crewsOnChain: Type.Optional(
      Type.Array(Type.Object({ crew: Type.String(), share: Type.Number() })),
    ),
    /** When each of the tasks asked about is done. */
    milestones: Type.Optional(Type.Array(Milestone)),
  },
  { additionalProperties: false },
);
export type Forecast = Static<typeof Forecast>;
