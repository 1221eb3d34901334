import { type Static, Type } from 'typebox';
import { DarkSpell } from '../forecast/light/lightClock.ts';
import { Bank } from './effect.ts';
import { Id, Skilled, Task } from './task.ts';

/** `to` may start `wait` minutes (may be negative) after `from` finishes or starts. */
export const Link = Type.Object(
  {
    from: Id,
    to: Id,
    counts: Type.Union([Type.Literal('finish'), Type.Literal('start')]),
    wait: Type.Number(),
  },
  { additionalProperties: false },
);
export type Link = Static<typeof Link>;

/**
 * When the people of a crew eat and rest; `people` are how many of them, absent means the whole crew. Minutes after the
 * start of the build.
 */
export const Rest = Type.Object(
  {
    from: Type.Number({ minimum: 0 }),
    to: Type.Number({ minimum: 0 }),
    people: Type.Optional(Type.Integer({ minimum: 1, maximum: 500 })),
  },
  { additionalProperties: false },
);

export type Rest = Static<typeof Rest>;

/** From then on so many: a relief, people who come later, go or come back. Minutes after the start of the build. */
export const Strength = Type.Object(
  { from: Type.Number({ minimum: 0 }), people: Type.Integer({ minimum: 0, maximum: 500 }) },
  { additionalProperties: false },
);

/** People who work with another crew for a while; `to` absent: for the rest of the build. */
export const Lent = Type.Object(
  {
    crew: Id,
    people: Type.Integer({ minimum: 1, maximum: 500 }),
    from: Type.Number({ minimum: 0 }),
    to: Type.Optional(Type.Number({ minimum: 0 })),
  },
  { additionalProperties: false },
);

/** A named group of interchangeable people. `from` and `to` are minutes after the start; absent means the whole build. */
export const Crew = Type.Object(
  {
    id: Id,
    name: Type.String({ minLength: 1, maxLength: 60 }),
    people: Type.Integer({ minimum: 0, maximum: 500 }),
    from: Type.Optional(Type.Number({ minimum: 0 })),
    to: Type.Optional(Type.Number({ minimum: 0 })),
    /** How strong it is later on, in order of time; `people` until the first of these. */
    strength: Type.Optional(Type.Array(Strength)),
    /** People of this crew who are with another: they count there and not here. */
    lent: Type.Optional(Type.Array(Lent)),
    /**
     * Over a rest of the whole crew work pauses; what cannot be left half done starts only when it is done before. While
     * some of them rest, the crew is weaker by so many.
     */
    rests: Type.Optional(Type.Array(Rest)),
    /** What all of its people can do. */
    skills: Type.Array(Id),
    /** What only some of them can do, and how many. */
    skilled: Type.Optional(Type.Array(Skilled)),
    /** Attached people (medic, boat, drivers): counted on site, not part of the platoon's crews. */
    attached: Type.Boolean(),
    chief: Type.Optional(Type.String({ maxLength: 60 })),
  },
  { additionalProperties: false },
);
export type Crew = Static<typeof Crew>;

/** A part of the site. `room` is how many people it holds; absent means no limit. */
export const Zone = Type.Object(
  {
    id: Id,
    name: Type.String({ minLength: 1 }),
    bank: Type.Union([Bank, Type.Literal('over'), Type.Literal('water')]),
    room: Type.Optional(Type.Integer({ minimum: 0 })),
  },
  { additionalProperties: false },
);
export type Zone = Static<typeof Zone>;

/** A truck load of stores. `arrives` is minutes after the start of the build. */
export const Load = Type.Object(
  {
    id: Id,
    name: Type.String({ minLength: 1 }),
    arrives: Type.Number(),
    tonnes: Type.Optional(Type.Number({ minimum: 0 })),
  },
  { additionalProperties: false },
);
export type Load = Static<typeof Load>;

/** Things of one kind that tasks hold while they run (jacks, winches, boats), and how many of them are on site. */
const Equipment = Type.Object(
  {
    id: Id,
    name: Type.String({ minLength: 1, maxLength: 60 }),
    count: Type.Integer({ minimum: 0, maximum: 1000 }),
  },
  { additionalProperties: false },
);

const Dark = Type.Object(
  { spells: Type.Array(DarkSpell), factor: Type.Number({ minimum: 1, maximum: 10 }) },
  { additionalProperties: false },
);

/** The whole order of work of one build: what is to be done, by whom, where, with what. */
export const Work = Type.Object(
  {
    tasks: Type.Array(Task),
    links: Type.Array(Link),
    crews: Type.Array(Crew),
    zones: Type.Array(Zone),
    loads: Type.Array(Load),
    /** Absent: what tasks name is only kept, and there is enough of it. */
    equipment: Type.Optional(Type.Array(Equipment)),
    /** When it is dark, in order and apart, and how many times as long work then takes; absent: always light. */
    dark: Type.Optional(Dark),
    /** Minutes that people take from a task on one bank to their next on the other; absent: none. */
    crossing: Type.Optional(Type.Number({ minimum: 0, maximum: 1440 })),
  },
  { additionalProperties: false },
);
export type Work = Static<typeof Work>;
