import { type Static, Type } from 'typebox';
import { Effect, Place } from './effect.ts';
import { Hold } from './hold.ts';

/** Letters, digits, `.`, `_`, `-`: safe in tables, addresses and file names. */
export const Id = Type.String({ pattern: '^[A-Za-z0-9._-]+$', minLength: 1, maxLength: 64 });

/** People a task can use. `usual` goes with the task's minutes; fewer stretch them, more shrink them. */
export const People = Type.Object(
  {
    least: Type.Integer({ minimum: 0, maximum: 500 }),
    usual: Type.Integer({ minimum: 0, maximum: 500 }),
    most: Type.Integer({ minimum: 0, maximum: 500 }),
  },
  { additionalProperties: false },
);
export type People = Static<typeof People>;

/** Three-point estimate in minutes with the usual people: quick <= likely <= slow. */
export const Minutes = Type.Object(
  {
    quick: Type.Number({ minimum: 0 }),
    likely: Type.Number({ minimum: 0 }),
    slow: Type.Number({ minimum: 0 }),
  },
  { additionalProperties: false },
);
export type Minutes = Static<typeof Minutes>;

/** So many people with a skill. */
export const Skilled = Type.Object(
  { skill: Id, people: Type.Integer({ minimum: 1, maximum: 500 }) },
  { additionalProperties: false },
);
export type Skilled = Static<typeof Skilled>;

/**
 * People wanted from one crew. `anyOf` names the crews that can; empty means any crew.
 * A joint task has several needs, each met by a different crew, all at work for the whole task.
 */
export const Need = Type.Object(
  {
    anyOf: Type.Array(Id),
    people: People,
    /** What all of them must be able to do. */
    skill: Type.Optional(Id),
    /** What only some of them must be able to do, and how many. */
    with: Type.Optional(Type.Array(Skilled)),
  },
  { additionalProperties: false },
);
export type Need = Static<typeof Need>;

/** So many of one kind of equipment. */
const Held = Type.Object(
  { id: Id, count: Type.Integer({ minimum: 1, maximum: 1000 }) },
  { additionalProperties: false },
);

/** Just when a task starts, in minutes after the start of the build, and crews that take part in it. */
export const Fixed = Type.Object(
  {
    start: Type.Optional(Type.Number({ minimum: 0 })),
    crews: Type.Optional(Type.Array(Id, { minItems: 1 })),
  },
  { additionalProperties: false },
);

/** One job of the order of work. */
export const Task = Type.Object(
  {
    id: Id,
    /** Short number for the radio, unique in the build, from 1 in the order of work. */
    number: Type.Integer({ minimum: 1 }),
    name: Type.String({ minLength: 1, maxLength: 120 }),
    /** Phase of the build in plain words ("Bays"); empty when a table names none. */
    phase: Type.String(),
    needs: Type.Array(Need),
    minutes: Minutes,
    zones: Type.Array(Id),
    /** While it runs, its zones are closed to all but its own people. */
    keepOff: Type.Boolean(),
    hold: Type.Optional(Hold),
    /** Traffic may cross when this task is passed. At most one task of a build opens. */
    opens: Type.Boolean(),
    cautions: Type.Array(Type.String()),
    /** What the crew brings to the place, in words ("8 pins", "lifting bars"). */
    tools: Type.Array(Type.String()),
    /** Ids of loads that must have arrived before it can start. */
    loads: Type.Array(Id),
    /** What it holds while it runs, and how many. */
    equipment: Type.Optional(Type.Array(Held)),
    /** It must be done while it is light. */
    daylight: Type.Optional(Type.Boolean()),
    /** What the leader has set: no plan does otherwise. */
    fixed: Type.Optional(Fixed),
    place: Type.Optional(Place),
    /** What the span shows once it is done. */
    effect: Type.Optional(Effect),
  },
  { additionalProperties: false },
);
export type Task = Static<typeof Task>;
