import { type Static, Type } from 'typebox';
import { entry, number, strict, text, textOrNone } from './stateFields.ts';

/** A live tell about a crew, in order of arrival. */
export const CrewTell = strict({
  entry,
  kind: Type.Union([Type.Literal('strength'), Type.Literal('hurt'), Type.Literal('relief')]),
  at: text,
  fit: Type.Optional(number),
  outOfWork: Type.Optional(Type.Boolean()),
});
export type CrewTell = Static<typeof CrewTell>;

export const CrewState = strict({
  fit: Type.Integer({ minimum: 0 }),
  hurt: Type.Integer({ minimum: 0 }),
  /** Hurt and out of work since the strength was last counted. */
  outOfWork: Type.Integer({ minimum: 0 }),
  /** When the strength was last told; null when it is the plan's. */
  toldAt: textOrNone,
  /** People by the order of work, and the entry that set this number: counts told before it are superseded. */
  planned: strict({ people: Type.Integer({ minimum: 0 }), entry }),
  tells: Type.Array(CrewTell),
});
export type CrewState = Static<typeof CrewState>;
