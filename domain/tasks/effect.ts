import { type Static, Type } from 'typebox';

/** Left and right always face the far bank. */
export const Side = Type.Union([Type.Literal('left'), Type.Literal('right')]);
export type Side = Static<typeof Side>;

export const Bank = Type.Union([Type.Literal('near'), Type.Literal('far')]);
export type Bank = Static<typeof Bank>;

/** Where on the bridge or the site a task is done, for the drawing. Bays count from 1 at the front (the end that leads). */
export const Place = Type.Object(
  {
    part: Type.String(),
    bays: Type.Optional(Type.Array(Type.Integer({ minimum: 1 }))),
    side: Type.Optional(Side),
    bank: Type.Optional(Bank),
  },
  { additionalProperties: false },
);
export type Place = Static<typeof Place>;

const bays = Type.Array(Type.Integer({ minimum: 1 }));

/** What a finished task adds to the bridge, so that the span can be drawn from progress alone. */
export const Effect = Type.Union([
  Type.Object({
    kind: Type.Literal('nose'),
    section: Type.Integer({ minimum: 1 }),
    side: Type.Optional(Side),
  }),
  Type.Object({
    kind: Type.Literal('bay'),
    bay: Type.Integer({ minimum: 1 }),
    side: Type.Optional(Side),
  }),
  Type.Object({ kind: Type.Literal('brace'), bay: Type.Integer({ minimum: 1 }) }),
  Type.Object({
    kind: Type.Literal('move'),
    stage: Type.Integer({ minimum: 1 }),
    metres: Type.Number(),
    lands: Type.Boolean(),
  }),
  Type.Object({ kind: Type.Literal('deck'), bays }),
  Type.Object({ kind: Type.Literal('kerb'), bays }),
  Type.Object({
    kind: Type.Literal('nose-off'),
    sections: Type.Array(Type.Integer({ minimum: 1 })),
  }),
  Type.Object({ kind: Type.Literal('seated'), bank: Bank }),
  Type.Object({ kind: Type.Literal('ramp'), bank: Bank }),
  Type.Object({ kind: Type.Literal('approach'), bank: Bank }),
]);
export type Effect = Static<typeof Effect>;
