import { type Static, Type } from 'typebox';

/** A range of numbers in the measure's unit; an end that is absent is open. */
export const Range = Type.Object(
  { least: Type.Optional(Type.Number()), most: Type.Optional(Type.Number()) },
  { additionalProperties: false },
);
export type Range = Static<typeof Range>;

/**
 * One value that an inspector reads off and enters. `least` and `most` are the kit's hard limits: outside them the hold
 * passes only by the concession of a named higher authority.
 */
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
      Type.Literal('kN'),
    ]),
    least: Type.Optional(Type.Number()),
    most: Type.Optional(Type.Number()),
    /** Where the value ought to lie. Outside it but inside the limits it passes with the inspector's reason. */
    soft: Type.Optional(Range),
    /** What was worked out for it beforehand, shown beside the field to compare with. */
    reckoned: Type.Optional(Type.Number()),
    /** It may be left out where it cannot be measured. Every other measure has to be entered. */
    optional: Type.Optional(Type.Literal(true)),
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
