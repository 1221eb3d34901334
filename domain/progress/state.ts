import type { Bridge } from '../bridge/bridge.ts';
import type { Ground } from '../bridge/ground.ts';
import type { Plan } from '../schedule/plan.ts';
import type { Bank } from '../tasks/effect.ts';
import type { Work } from '../tasks/work.ts';
import type { Author } from './command.ts';
import type { Breach } from './entry.ts';

/** Raised whenever `evolve` would fold the same record into something else. */
export const foldVersion = 1;

export type TaskStatus = 'to-come' | 'at-work' | 'stopped' | 'done';

/** A live tell about a task in its present attempt, in order of arrival. Status is derived from these alone. */
export type TaskTell = {
  readonly entry: number;
  readonly kind: 'started' | 'finished' | 'stopped' | 'resumed' | 'part' | 'settled' | 'halted';
  /** Whose fact; for `settled` and `halted` empty. */
  readonly crew: string;
  readonly by: Author;
  readonly at: string;
  readonly why?: string;
  readonly part?: number;
  readonly settled?: 'done' | 'stopped';
};

/** Where one crew stands with a task. A joint task has one of these per crew. */
export type Share = {
  readonly crew: string;
  readonly status: TaskStatus;
  readonly startedAt: string | null;
  readonly finishedAt: string | null;
  readonly why: string | null;
  /** 0 to 1. */
  readonly part: number;
};

/** `none` for a task that is no hold. */
export type HoldStatus = 'none' | 'open' | 'passed' | 'failed' | 'lapsed';

export type TaskState = {
  readonly status: TaskStatus;
  /** 1, and one more for each redo. */
  readonly attempt: number;
  readonly startedAt: string | null;
  readonly finishedAt: string | null;
  /** Why it is stopped. */
  readonly why: string | null;
  readonly part: number;
  readonly shares: readonly Share[];
  /** One says done, another stopped: the worse holds until the leader settles it. */
  readonly disputed: boolean;
  /** Started on the strength of something since withdrawn or reopened. */
  readonly flagged: boolean;
  readonly hold: HoldStatus;
  readonly passedBy: string | null;
  readonly ownWork: boolean;
  readonly values: Readonly<Record<string, number | boolean>>;
  /** How many times the hold failed. */
  readonly failures: number;
  readonly tells: readonly TaskTell[];
};

export type CrewState = {
  readonly fit: number;
  readonly hurt: number;
  /** When the strength was last told; null when it is the plan's. */
  readonly toldAt: string | null;
};

/** Head counts and "seen clear" told for a keep-off task that is to start. Void after it, after a halt, and when work starts in its zones. */
export type Clearance = {
  readonly off: Readonly<
    Record<
      string,
      { readonly off: number; readonly of: number; readonly at: string; readonly entry: number }
    >
  >;
  readonly clear: Readonly<
    Partial<
      Record<
        Bank,
        {
          readonly name: string;
          readonly people: number;
          readonly at: string;
          readonly entry: number;
        }
      >
    >
  >;
};

export type Halt = {
  readonly entry: number;
  readonly by: Author;
  readonly why: string;
  readonly at: string;
  /** Crews that said "loads down, clear", and how many they counted. */
  readonly acknowledged: Readonly<
    Record<string, { readonly people: number; readonly of: number; readonly at: string }>
  >;
};

export type LoadState = {
  readonly status: 'expected' | 'late' | 'in';
  /** ISO 8601 UTC: when it came or is now expected. */
  readonly at: string;
  readonly why: string | null;
};

/** A thing worth saying in a report. */
export type Event = {
  readonly entry: number;
  readonly kind: 'hurt' | 'near-miss' | 'short' | 'breach' | 'halt' | 'hold-failed' | 'reopened';
  readonly at: string;
  readonly sentence: string;
  readonly task?: string;
  readonly crew?: string;
  readonly breach?: Breach;
};

/** The last entries that can be withdrawn: tells, with what they need to be undone. */
export type WithdrawableTell = {
  readonly entry: number;
  readonly kind: string;
  readonly by: Author;
  readonly saidBy: string | null;
  readonly receivedAt: string;
  readonly body: unknown;
};

/** All that is known of a build: the fold of its record. Plain data. */
export type BuildState = {
  readonly fold: number;
  /** Number of the last entry folded; 0 before the build is opened. */
  readonly number: number;
  readonly name: string;
  readonly unit: string;
  readonly program: string;
  readonly start: string;
  readonly askedFor: string | null;
  readonly zone: string;
  readonly confidence: number;
  readonly ground: Ground | null;
  readonly bridge: Bridge | null;
  readonly work: Work;
  readonly plan: Plan | null;
  /** How many plans have been accepted. */
  readonly planCount: number;
  readonly planAcceptedAt: string | null;
  /** Record number of the last entry that changed work, crews or loads: a plan made on an older one is stale. */
  readonly workNumber: number;
  readonly tasks: Readonly<Record<string, TaskState>>;
  readonly crews: Readonly<Record<string, CrewState>>;
  readonly loads: Readonly<Record<string, LoadState>>;
  readonly clearances: Readonly<Record<string, Clearance>>;
  readonly halt: Halt | null;
  readonly events: readonly Event[];
  readonly water: {
    readonly rise: number | null;
    readonly level: number | null;
    readonly at: string | null;
  };
  readonly wind: { readonly speed: number | null; readonly at: string | null };
  readonly tells: readonly WithdrawableTell[];
  /** Entries of kinds this program does not know: kept in the record and counted here. */
  readonly unknown: number;
};
