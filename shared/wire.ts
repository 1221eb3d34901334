import type { Fault } from '#domain/fault.ts';
import type { Forecast } from '#domain/forecast/forecast.ts';
import type { Author, CommandKind } from '#domain/progress/command.ts';
import type { Breach } from '#domain/progress/entry.ts';
import type { BuildState } from '#domain/progress/state.ts';
import type { RefusalCode } from '#domain/refusal.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { Change } from '#domain/tasks/change.ts';

/** POST /api/builds/:build/commands */
export type CommandRequest = {
  readonly id: string;
  readonly kind: CommandKind;
  readonly body: unknown;
  readonly saidBy?: string;
  /** Device clock, ISO 8601 UTC. */
  readonly happenedAt: string;
  /** Device clock at sending: the server takes the device's skew from it. */
  readonly sentAt: string;
};

/** The answer to a command; the same id again gets the same answer. */
export type Receipt =
  | {
      readonly id: string;
      readonly outcome: 'recorded';
      readonly entry: number;
      readonly breaches: readonly Breach[];
    }
  | ({ readonly id: string; readonly outcome: 'refused' } & RefusalReply);

/** The body of every reply that is not a 2xx, and of a refused receipt. */
export type RefusalReply = {
  readonly code: RefusalCode;
  readonly sentence: string;
  readonly of?: readonly string[];
  readonly faults?: readonly Fault[];
};

/** A forecast as the feed carries it. `number` is the record number it was made on. */
export type ForecastFrame = {
  readonly number: number;
  readonly at: string;
  readonly forecast: Forecast | null;
  /** Why there is none: no plan yet, or the build is open. */
  readonly why: string | null;
};

/** GET /api/builds/:build */
export type Snapshot = {
  readonly build: string;
  readonly fold: number;
  readonly state: BuildState;
  readonly you: Author;
  readonly forecast: ForecastFrame | null;
  /** Server clock, ISO 8601 UTC. */
  readonly now: string;
};

/**
 * Frames of GET /api/builds/:build/feed?after=N (text/event-stream; `event:` is the frame's name, `id:` the number).
 * `delta` carries the changed top-level parts of the state and, under `tasks`, only the changed tasks.
 */
export type DeltaFrame = {
  readonly number: number;
  readonly fold: number;
  readonly changed: Partial<Omit<BuildState, 'tasks'>>;
  readonly tasks: BuildState['tasks'];
  /** Tasks that no longer exist. */
  readonly gone: readonly string[];
  readonly kind: string;
};
export type ProgressFrame = { readonly job: string; readonly done: number; readonly of: number };
export type BeatFrame = { readonly now: string };

/** POST /api/builds/:build/proposals: plan again with these changes, recorded nowhere until accepted. */
export type ProposalRequest = { readonly changes: readonly Change[] };
export type Proposal = {
  readonly proposal: string;
  readonly basis: number;
  readonly plan: Plan;
  readonly forecast: Forecast;
  /** The plan in force and its forecast from now; null before the first plan. */
  readonly before: { readonly minutesToOpen: number; readonly forecast: Forecast } | null;
  /** One sentence: "opens 14 min earlier; changes 5 tasks". */
  readonly gain: string;
};

/** A link with a secret: a role for one build. */
export type LinkInfo = {
  readonly id: string;
  readonly role: Author['role'];
  readonly name: string;
  readonly crew?: string;
  readonly withdrawn: boolean;
};
export type NewLink = LinkInfo & { readonly address: string };
