import { type Static, Type } from 'typebox';
import { Id, Minutes, People } from './task.ts';
import { Crew, Link } from './work.ts';

/** A change to the order of work that a leader tries before accepting it. */
export const Change = Type.Union([
  Type.Object(
    {
      kind: Type.Literal('task'),
      task: Id,
      minutes: Type.Optional(Minutes),
      /** One per need of the task, in order. */
      people: Type.Optional(Type.Array(People)),
    },
    { additionalProperties: false },
  ),
  Type.Object({ kind: Type.Literal('link-add'), link: Link }, { additionalProperties: false }),
  Type.Object(
    { kind: Type.Literal('link-remove'), from: Id, to: Id },
    { additionalProperties: false },
  ),
  /** Replaces the crew of that id, or adds it. */
  Type.Object({ kind: Type.Literal('crew'), crew: Crew }, { additionalProperties: false }),
  /** A load is expected at another time, minutes after the start of the build. */
  Type.Object(
    { kind: Type.Literal('load'), load: Id, arrives: Type.Number() },
    { additionalProperties: false },
  ),
]);
export type Change = Static<typeof Change>;
