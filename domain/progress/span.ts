import type { TaskStatus } from './state.ts';

/** One piece of the bridge and the task that makes it. */
export type Piece = { readonly task: string; readonly status: TaskStatus };

export type SpanBay = {
  /** 1 leads. */
  readonly bay: number;
  /** Left, right and brace tasks; `whole` sums them: done when all are done, at work when any is. */
  readonly pieces: readonly Piece[];
  readonly whole: TaskStatus;
  readonly deck: Piece | null;
  readonly kerb: Piece | null;
};

/** The bridge as it stands, derived from progress: what the span drawing shows. Metres. */
export type Span = {
  readonly nose: readonly {
    readonly section: number;
    readonly whole: TaskStatus;
    readonly off: boolean;
    readonly tasks: readonly string[];
  }[];
  readonly bays: readonly SpanBay[];
  /** Metres moved so far. */
  readonly moved: number;
  /** Metres to move in all. */
  readonly toMove: number;
  /** Centre of gravity behind the front rollers, as built so far; null when landed, or nothing stands yet. */
  readonly balance: number | null;
  readonly landed: boolean;
  readonly seated: { readonly near: boolean; readonly far: boolean };
  readonly ramps: { readonly near: TaskStatus | null; readonly far: TaskStatus | null };
  readonly approaches: { readonly near: TaskStatus | null; readonly far: TaskStatus | null };
  readonly nextMove: {
    readonly task: string;
    readonly metres: number;
    readonly lands: boolean;
  } | null;
};
