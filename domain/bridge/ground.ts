import { type Static, Type } from 'typebox';

/** A measured number, or null: unknown stays marked unknown. */
function measured(options: { minimum?: number; maximum?: number }) {
  return Type.Union([Type.Number(options), Type.Null()]);
}

const BankGround = Type.Object(
  {
    /** A made abutment or the natural bank. */
    kind: Type.Union([Type.Literal('made'), Type.Literal('natural')]),
    /** Metres from bank top down to the water or the bed. */
    height: measured({ minimum: 0, maximum: 60 }),
    /** Metres that the bearing must stand back from the edge (the kit's or the local rule). */
    setback: Type.Number({ minimum: 0, maximum: 20 }),
  },
  { additionalProperties: false },
);

/** What was measured at the site. Metres, metres per hour, degrees. */
export const Ground = Type.Object(
  {
    format: Type.Literal('spanwright-ground'),
    version: Type.Literal(1),
    name: Type.String({ minLength: 1, maxLength: 80 }),
    /** IANA time zone of the site. */
    zone: Type.String({ minLength: 1, maxLength: 60 }),
    place: Type.Union([
      Type.Object(
        {
          latitude: Type.Number({ minimum: -90, maximum: 90 }),
          longitude: Type.Number({ minimum: -180, maximum: 180 }),
        },
        { additionalProperties: false },
      ),
      Type.Null(),
    ]),
    /** Metres between the bank edges on the centre line. */
    gap: Type.Number({ minimum: 1, maximum: 200 }),
    near: BankGround,
    far: BankGround,
    /** Metres of firm level ground behind the front rollers. */
    roomBehind: measured({ minimum: 0, maximum: 500 }),
    water: Type.Object(
      {
        depth: measured({ minimum: 0, maximum: 60 }),
        /** Metres per hour, positive when rising. */
        rise: measured({ minimum: -5, maximum: 5 }),
      },
      { additionalProperties: false },
    ),
    /** Load class asked for. */
    loadClass: Type.Integer({ minimum: 1, maximum: 150 }),
  },
  { additionalProperties: false },
);
export type Ground = Static<typeof Ground>;
