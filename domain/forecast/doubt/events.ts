import { type Static, Type } from 'typebox';
import { Id, Minutes } from '../../tasks/task.ts';

const common = {
  id: Id,
  /** In plain words: "a pin jams". */
  name: Type.String({ minLength: 1, maxLength: 80 }),
  on: Type.Boolean(),
  /** Of happening to each task or load named, 0 to 1. */
  chance: Type.Number({ minimum: 0, maximum: 1 }),
  source: Type.String({ minLength: 1, maxLength: 200 }),
};

/** A truck comes later than expected, if it has not come and nobody has told when it will. */
const LateLoad = Type.Object(
  { ...common, kind: Type.Literal('late-load'), loads: Type.Array(Id), delay: Minutes },
  { additionalProperties: false },
);

/** Something holds a task up for some minutes: a pin jams, a vehicle sticks. */
const Jam = Type.Object(
  { ...common, kind: Type.Literal('jam'), tasks: Type.Array(Id), delay: Minutes },
  { additionalProperties: false },
);

/** A hold is failed: its redo list is done once more, then the inspection; that may fail again, twice at most. */
const HoldFails = Type.Object(
  { ...common, kind: Type.Literal('hold-fails'), tasks: Type.Array(Id) },
  { additionalProperties: false },
);

/** Something that may happen, with its chance. Minutes as the crew sees them, with no factor. */
export const DoubtEvent = Type.Union([LateLoad, Jam, HoldFails]);
export type DoubtEvent = Static<typeof DoubtEvent>;
