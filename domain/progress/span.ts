import { type Static, Type } from 'typebox';
import { TaskStatus } from './state.ts';

const statusOrNone = Type.Union([TaskStatus, Type.Null()]);

/** One piece of the bridge and the task that makes it. */
export const Piece = Type.Object(
  { task: Type.String(), status: TaskStatus },
  { additionalProperties: false },
);
export type Piece = Static<typeof Piece>;

const pieceOrNone = Type.Union([Piece, Type.Null()]);

export const SpanBay = Type.Object(
  {
    /** 1 leads. */
    bay: Type.Integer({ minimum: 1 }),
    /** Left, right and brace tasks; `whole` sums them: done when all are done, at work when any is. */
    pieces: Type.Array(Piece),
    whole: TaskStatus,
    deck: pieceOrNone,
    kerb: pieceOrNone,
  },
  { additionalProperties: false },
);
export type SpanBay = Static<typeof SpanBay>;

export const SpanNose = Type.Object(
  {
    section: Type.Integer({ minimum: 1 }),
    whole: TaskStatus,
    off: Type.Boolean(),
    tasks: Type.Array(Type.String()),
  },
  { additionalProperties: false },
);
export type SpanNose = Static<typeof SpanNose>;

/** The bridge as it stands, derived from progress: what the span drawing shows. Metres. */
export const Span = Type.Object(
  {
    nose: Type.Array(SpanNose),
    bays: Type.Array(SpanBay),
    /** Metres moved so far. */
    moved: Type.Number(),
    /** Metres to move in all. */
    toMove: Type.Number(),
    /** Centre of gravity behind the front rollers, as built so far; null when landed, or nothing stands yet. */
    balance: Type.Union([Type.Number(), Type.Null()]),
    landed: Type.Boolean(),
    seated: Type.Object(
      { near: Type.Boolean(), far: Type.Boolean() },
      { additionalProperties: false },
    ),
    ramps: Type.Object({ near: statusOrNone, far: statusOrNone }, { additionalProperties: false }),
    approaches: Type.Object(
      { near: statusOrNone, far: statusOrNone },
      { additionalProperties: false },
    ),
    nextMove: Type.Union([
      Type.Object(
        { task: Type.String(), metres: Type.Number(), lands: Type.Boolean() },
        { additionalProperties: false },
      ),
      Type.Null(),
    ]),
  },
  { additionalProperties: false },
);
export type Span = Static<typeof Span>;
