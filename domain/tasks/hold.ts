import { type Static, Type } from 'typebox';

/** One value that an inspector reads off and enters. Limits are the kit's: outside them the hold cannot pass. */
export const Measure = Type.Object(
  {
    key: Type.String({ pattern: '^[A-Za-z0-9._-]+$' }),
    name: Type.String({ minLength: 1 }),
    /** `yes` is a thing seen and said; the others are numbers in that unit. */
    unit: Type.Union([
      Type.Literal('yes'),
      Type.Literal('count'),
      Type.Literal('mm'),
      Type.Literal('m'),
      Type.Literal('degrees'),
      Type.Literal('m/s'),
    ]),
    least: Type.Optional(Type.Number()),
    most: Type.Optional(Type.Number()),
  },
  { additionalProperties: false },
);
export type Measure = Static<typeof Measure>;

/** What makes an earlier pass worthless. */
export const LapseCause = Type.Union([
  Type.Literal('move'),
  Type.Literal('jack'),
  Type.Literal('relief'),
  Type.Literal('wind'),
  Type.Literal('halt'),
]);
export type LapseCause = Static<typeof LapseCause>;

/** A task that only an inspection can pass, with measured values; a pass can lapse. */
export const Hold = Type.Object(
  {
    measures: Type.Array(Measure),
    lapsesOn: Type.Array(LapseCause),
    /** Ids of the tasks that come back when it fails. */
    redo: Type.Array(Type.String()),
  },
  { additionalProperties: false },
);
export type Hold = Static<typeof Hold>;
