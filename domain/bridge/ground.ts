import { type Static, Type } from 'typebox';
import { groundNumbers } from './groundNumbers.ts';

/** A number that has to be there, in the range of its kind. */
function known(kind: keyof typeof groundNumbers) {
  const { least, most } = groundNumbers[kind];
  return Type.Number({ minimum: least, maximum: most });
}

/** A measured number, or null: unknown stays marked unknown. */
function measured(kind: keyof typeof groundNumbers) {
  return Type.Union([known(kind), Type.Null()]);
}

const BankGround = Type.Object(
  {
    /** A made abutment or the natural bank. */
    kind: Type.Union([Type.Literal('made'), Type.Literal('natural')]),
    /** Metres from bank top down to the water or the bed. */
    height: measured('height'),
    /** Metres that the bearing must stand back from the edge (the kit's or the local rule). */
    setback: known('setback'),
    /** Degrees of the bank face from the level. */
    slope: Type.Optional(measured('slope')),
    /** Soft ground is matted or dug out before anything heavy comes onto it. */
    soil: Type.Optional(Type.Union([Type.Literal('firm'), Type.Literal('soft'), Type.Null()])),
    /** Kilopascals that the ground bears. */
    strength: Type.Optional(measured('strength')),
    /** Metres per metre from side to side. */
    crossFall: Type.Optional(measured('crossFall')),
    /** The way from the road: metres, and metres per metre. */
    approach: Type.Optional(
      Type.Object(
        { length: measured('approachLength'), slope: measured('approachSlope') },
        { additionalProperties: false },
      ),
    ),
  },
  { additionalProperties: false },
);
export type BankGround = Static<typeof BankGround>;

/** What was measured at the site. Metres, metres per hour, metres per second, degrees, kilopascals. */
export const Ground = Type.Object(
  {
    format: Type.Literal('spanwright-ground'),
    version: Type.Literal(1),
    name: Type.String({ minLength: 1, maxLength: 80 }),
    /** IANA time zone of the site. */
    zone: Type.String({ minLength: 1, maxLength: 60 }),
    place: Type.Union([
      Type.Object(
        { latitude: known('latitude'), longitude: known('longitude') },
        { additionalProperties: false },
      ),
      Type.Null(),
    ]),
    /** Metres between the bank edges on the centre line. */
    gap: known('gap'),
    near: BankGround,
    far: BankGround,
    /** Metres of firm level ground behind the front rollers. */
    roomBehind: measured('roomBehind'),
    /** Metres per metre that the roller line falls towards the gap; negative rises. */
    rollerFall: Type.Optional(measured('rollerFall')),
    water: Type.Object(
      {
        depth: measured('depth'),
        /** Metres per hour, positive when rising. */
        rise: measured('rise'),
        /** Metres on a gauge: the water now, and where the work has to stop. */
        level: Type.Optional(measured('level')),
        limit: Type.Optional(measured('limit')),
      },
      { additionalProperties: false },
    ),
    /** Metres per second. */
    wind: Type.Optional(measured('wind')),
    /** Load class asked for. */
    loadClass: Type.Integer({
      minimum: groundNumbers.loadClass.least,
      maximum: groundNumbers.loadClass.most,
    }),
  },
  { additionalProperties: false },
);
export type Ground = Static<typeof Ground>;
