import { type Static, Type } from 'typebox';

/**
 * One stage of the launch: build up to `bays`, then move `metres`. Lengths in metres, masses in kilograms.
 * `balance` is how far the centre of gravity lies behind the front rollers after the move; negative means it tips.
 */
export const Stage = Type.Object(
  {
    stage: Type.Integer({ minimum: 1 }),
    /** Bays built before this move. */
    bays: Type.Integer({ minimum: 0 }),
    /** Bay numbers decked before this move. */
    decked: Type.Array(Type.Integer({ minimum: 1 })),
    metres: Type.Number(),
    /** Metres moved in all after this move. */
    moved: Type.Number(),
    /** Nose tip, metres ahead of the front rollers after the move. */
    tip: Type.Number(),
    /** Metres behind the front rollers; on the landing move just before the far rollers take weight; null after it. */
    balance: Type.Union([Type.Number(), Type.Null()]),
    lands: Type.Boolean(),
    /** Nose sections (1 is the tip) that are past the far rollers after the move and come off before the next one. */
    noseOff: Type.Optional(Type.Array(Type.Integer({ minimum: 1 }))),
    /** Kilograms of weights on the tail during this move; absent where there are none. */
    counterweight: Type.Optional(Type.Number()),
  },
  { additionalProperties: false },
);
export type Stage = Static<typeof Stage>;

/** The design that answers the ground. Metres and kilograms. */
export const Bridge = Type.Object(
  {
    kit: Type.Object({
      name: Type.String(),
      title: Type.String(),
      hash: Type.String(),
      notForUse: Type.Boolean(),
    }),
    /** `launched` is pushed out over rollers; `floated` is boomed out bay by bay. */
    manner: Type.Union([Type.Literal('launched'), Type.Literal('floated')]),
    bays: Type.Integer({ minimum: 1 }),
    bayLength: Type.Number(),
    length: Type.Number(),
    nose: Type.Integer({ minimum: 0 }),
    noseLength: Type.Number(),
    /** Metres of bridge on each bank beyond the setback. */
    bearing: Type.Object({ near: Type.Number(), far: Type.Number() }),
    loadClass: Type.Integer(),
    gap: Type.Number(),
    /** Metres ahead of the front rollers at which the tip meets the landing roller. */
    landsAt: Type.Number(),
    /** Metres behind the front rollers that the tail and the pushing vehicle take. */
    roomNeeded: Type.Number(),
    /** Mass of one bay bare, of its deck, of one nose section. */
    masses: Type.Object({ bay: Type.Number(), deck: Type.Number(), nose: Type.Number() }),
    stages: Type.Array(Stage),
    parts: Type.Array(
      Type.Object({
        part: Type.String(),
        count: Type.Integer(),
        /** Mass of one. */
        kilograms: Type.Number(),
        /** People who lift one by hand; 0 is lifted by machine. */
        carriers: Type.Integer(),
      }),
    ),
    /** Banks whose ground is soft: their footings are widened and the way to them made firm first. */
    softBanks: Type.Optional(Type.Array(Type.Union([Type.Literal('near'), Type.Literal('far')]))),
    /** What the answer hangs on and nobody has measured. */
    unknowns: Type.Array(Type.String()),
  },
  { additionalProperties: false },
);
export type Bridge = Static<typeof Bridge>;
