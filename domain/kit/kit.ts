import { type Static, Type } from 'typebox';
import { Crew, Zone } from '../tasks/work.ts';
import { KitId, TaskTemplate } from './order.ts';

const Metres = Type.Number({ exclusiveMinimum: 0, maximum: 1000 });
const Fall = Type.Number({ minimum: 0, maximum: 1 });
const Newtons = Type.Number({ exclusiveMinimum: 0, maximum: 10_000_000 });
/** Bending stiffness of all girders together, newton square metres (modulus times second moment of area). */
const Stiffness = Type.Number({ exclusiveMinimum: 0, maximum: 1e13 });
const Kilograms = Type.Number({ exclusiveMinimum: 0, maximum: 1_000_000 });

/** A kind of part. `carriers` is how many people lift one by hand; 0 is lifted by machine. Kilograms. */
export const Part = Type.Object(
  {
    id: KitId,
    name: Type.String({ minLength: 1, maxLength: 60 }),
    /** Parts that are loaded and used together. `bay`, `deck` and `nose` carry the launch masses. */
    group: KitId,
    mass: Kilograms,
    carriers: Type.Integer({ minimum: 0, maximum: 40 }),
    /** So many for each bay, for each nose section, or for the whole bridge. */
    count: Type.Integer({ minimum: 1, maximum: 10_000 }),
    per: Type.Union([Type.Literal('bay'), Type.Literal('section'), Type.Literal('bridge')]),
    /** One packed for the road, for stacks and truck beds. Absent: only its mass is packed. Metres. */
    size: Type.Optional(
      Type.Object(
        { length: Metres, width: Metres, height: Metres },
        { additionalProperties: false },
      ),
    ),
  },
  { additionalProperties: false },
);
export type Part = Static<typeof Part>;

/** Rules for pushing the bridge out over rollers. Metres and kilograms. */
export const LaunchRules = Type.Object(
  {
    /**
     * Bays built between two moves where the balance lets the bridge move, so that each lot is built in the same place.
     * Absent: as many as the room behind takes, which makes the fewest moves.
     */
    lot: Type.Optional(Type.Integer({ minimum: 1, maximum: 100 })),
    /** Smallest distance of the centre of gravity behind the front rollers at the end of a move, until the tip lands. */
    margin: Type.Number({ minimum: 0, maximum: 50 }),
    longestMove: Metres,
    /** Most that the vehicle may push. */
    heaviestPush: Kilograms,
    /** Room for the pushing vehicle behind the tail. */
    vehicleRoom: Type.Number({ minimum: 0, maximum: 100 }),
    /** How far the rollers stand back from the bearing line on each bank, away from the gap. */
    rollers: Type.Object(
      {
        near: Type.Number({ minimum: 0, maximum: 20 }),
        far: Type.Number({ minimum: 0, maximum: 20 }),
        /** Further rollers behind the front ones, metres back from them. Absent: the tail rests on packing. */
        behind: Type.Optional(Type.Array(Metres)),
        /** Height of the landing rollers above their bank less that of the front rollers above theirs. */
        step: Type.Optional(Type.Number({ minimum: -5, maximum: 5 })),
      },
      { additionalProperties: false },
    ),
    /** Most bays at the rear that may be decked before the tip lands, to hold the balance. */
    deckEarly: Type.Integer({ minimum: 0, maximum: 100 }),
    /** Nose sections taken off between two moves once the tip has landed. */
    noseOff: Type.Integer({ minimum: 1, maximum: 100 }),
    /** Weights that may be set on the tail until the tip lands: mass of one, and how many there are. */
    counterweight: Type.Optional(
      Type.Object(
        { mass: Kilograms, most: Type.Integer({ minimum: 1, maximum: 1000 }) },
        { additionalProperties: false },
      ),
    ),
    /** Newtons that it takes to roll each newton of bridge over the rollers on the level. */
    rolling: Type.Optional(Type.Number({ minimum: 0, maximum: 1 })),
    /** Newtons that the vehicle pushes and holds back at most, and that one person does. */
    push: Type.Optional(
      Type.Object({ vehicle: Newtons, person: Newtons }, { additionalProperties: false }),
    ),
  },
  { additionalProperties: false },
);
export type LaunchRules = Static<typeof LaunchRules>;

/** What the kit asks of banks, fall and wind. Metres, metres per metre, metres per second, kilopascals. */
const SiteLimits = Type.Object(
  {
    /** Least setback from the edge of a made abutment. */
    setbackMade: Type.Optional(Type.Number({ minimum: 0, maximum: 20 })),
    /** Least setback from the toe of a natural bank for each metre of its height. */
    setbackNatural: Type.Optional(Type.Number({ minimum: 0, maximum: 10 })),
    /** Most fall from side to side under bearings and rollers. */
    crossFall: Type.Optional(Fall),
    /** Most fall of the roller line along the bridge. */
    rollerFall: Type.Optional(Fall),
    /** Most slope of an approach. */
    approachSlope: Type.Optional(Fall),
    /** Most wind at which the bridge is moved. */
    wind: Type.Optional(Type.Number({ minimum: 0, maximum: 60 })),
    /** Area under one set of rollers or bearings on both sides together, square metres. */
    footing: Type.Optional(Type.Number({ exclusiveMinimum: 0, maximum: 1000 })),
  },
  { additionalProperties: false },
);

/** Most mass and bed of a truck. Metres and kilograms. */
const Truck = Type.Object(
  { mass: Kilograms, length: Metres, width: Metres, height: Metres },
  { additionalProperties: false },
);
export type Truck = Static<typeof Truck>;

/** What one pallet takes beside its own mass, its bed, and how high it is loaded. Metres and kilograms. */
const Pallet = Type.Object(
  { empty: Kilograms, mass: Kilograms, length: Metres, width: Metres, height: Metres },
  { additionalProperties: false },
);
export type Pallet = Static<typeof Pallet>;

/** Carrying by hand. Metres per minute and minutes. */
const Carry = Type.Object(
  {
    loaded: Type.Number({ exclusiveMinimum: 0, maximum: 200 }),
    empty: Type.Number({ exclusiveMinimum: 0, maximum: 200 }),
    /** To take one up, and to set it down in its place. */
    lift: Type.Number({ minimum: 0, maximum: 60 }),
    set: Type.Number({ minimum: 0, maximum: 60 }),
  },
  { additionalProperties: false },
);
export type Carry = Static<typeof Carry>;

/** A truck load, or several: what it carries and when it comes. Minutes after the start of the build. */
export const LoadTemplate = Type.Object(
  {
    id: KitId,
    /** With the number of the load and the bays it carries parts of: "Truck {load}, deck for {bays}". */
    name: Type.String({ minLength: 1, maxLength: 80 }),
    /** Groups it carries whole: those per bridge and per nose section, or per bay for all bays. */
    groups: Type.Array(KitId),
    /** One group of parts per bay, for some bays only. */
    bays: Type.Optional(
      Type.Object(
        {
          group: KitId,
          /** First bay, counted from the front; 1 when absent. */
          from: Type.Optional(Type.Integer({ minimum: 1, maximum: 100 })),
          /** Last bay; the bridge's when absent. */
          to: Type.Optional(Type.Integer({ minimum: 1, maximum: 100 })),
          /** Bays to a load; absent: one load carries all. */
          lot: Type.Optional(Type.Integer({ minimum: 1, maximum: 100 })),
          rearFirst: Type.Optional(Type.Boolean()),
        },
        { additionalProperties: false },
      ),
    ),
    /** Groups that the last of its loads carries besides. */
    last: Type.Optional(Type.Array(KitId)),
    arrives: Type.Number({ minimum: 0, maximum: 100_000 }),
    /** Minutes between its loads. */
    every: Type.Optional(Type.Number({ minimum: 0, maximum: 100_000 })),
  },
  { additionalProperties: false },
);
export type LoadTemplate = Static<typeof LoadTemplate>;

/**
 * An equipment set as data: what a bridge is made of, how far it reaches, what it carries, and in what order it is
 * built. Metres, kilograms and minutes. `kit check` prints what is wrong with one.
 */
export const Kit = Type.Object(
  {
    format: Type.Literal('spanwright-kit'),
    version: Type.Literal(1),
    name: KitId,
    title: Type.String({ minLength: 1, maxLength: 80 }),
    /** Says so on every sheet: an invented or unproven kit. */
    notForUse: Type.Boolean(),
    /** Where its numbers come from. */
    source: Type.String({ minLength: 1, maxLength: 400 }),
    manner: Type.Union([Type.Literal('launched'), Type.Literal('floated')]),
    bay: Type.Object(
      {
        length: Metres,
        /** Mass of a bay without its deck. */
        bare: Kilograms,
        /** Mass that its deck adds. */
        deck: Type.Number({ minimum: 0, maximum: 1_000_000 }),
        least: Type.Integer({ minimum: 1, maximum: 100 }),
        most: Type.Integer({ minimum: 1, maximum: 100 }),
        /** Of the bays; with that of the nose, the sag of the tip is reckoned. */
        stiffness: Type.Optional(Stiffness),
      },
      { additionalProperties: false },
    ),
    /** Light sections in front of bay 1 that reach the far bank first. Absent: pushed out without. */
    nose: Type.Optional(
      Type.Object(
        {
          length: Metres,
          mass: Kilograms,
          most: Type.Integer({ minimum: 1, maximum: 100 }),
          stiffness: Type.Optional(Stiffness),
        },
        { additionalProperties: false },
      ),
    ),
    /** Least length of bridge resting on each bank, beyond the setback. */
    bearing: Type.Object(
      {
        near: Type.Number({ minimum: 0, maximum: 20 }),
        far: Type.Number({ minimum: 0, maximum: 20 }),
      },
      { additionalProperties: false },
    ),
    /** Load class of a bridge up to so long, in rising order of length. */
    loadClasses: Type.Array(
      Type.Object(
        { upTo: Metres, loadClass: Type.Integer({ minimum: 1, maximum: 150 }) },
        { additionalProperties: false },
      ),
      { minItems: 1 },
    ),
    /** What the site must not go beyond. Absent: the kit sets no such limit. */
    limits: Type.Optional(SiteLimits),
    /** What a truck takes. Absent: loads are not packed. */
    truck: Type.Optional(Truck),
    /** What a pallet takes. Absent: every part goes loose onto the truck. */
    pallet: Type.Optional(Pallet),
    /** How parts are carried by hand. Absent: carrying is not reckoned. */
    carry: Type.Optional(Carry),
    /** For a launched kit. */
    launch: Type.Optional(LaunchRules),
    /** For a floated kit: bays joined and pushed out between two moves. */
    boom: Type.Optional(
      Type.Object(
        { lot: Type.Integer({ minimum: 1, maximum: 100 }), room: Type.Number({ minimum: 0 }) },
        { additionalProperties: false },
      ),
    ),
    parts: Type.Array(Part, { minItems: 1 }),
    zones: Type.Array(Zone, { minItems: 1 }),
    /** Suggested; a unit changes them. */
    crews: Type.Array(Crew, { minItems: 1 }),
    loads: Type.Array(LoadTemplate),
    order: Type.Array(TaskTemplate, { minItems: 1 }),
  },
  { additionalProperties: false },
);
export type Kit = Static<typeof Kit>;
