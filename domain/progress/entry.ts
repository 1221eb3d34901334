import type { Author, CommandBody, CommandKind } from './command.ts';

/** Rules that a told fact broke. The fact stands; the breach is shown to leader and chief at once. */
export type Breach = {
  readonly rule: 'halt' | 'keep-off' | 'order' | 'hold';
  /** One sentence: what was broken, by what. */
  readonly sentence: string;
  /** The task, hold or zone concerned. */
  readonly of: readonly string[];
};

/** What a command causes beyond itself. Entries carry results, never recipes. */
export type Consequence = {
  /** Tasks that come back, each with its new attempt. */
  readonly redo?: readonly { readonly task: string; readonly attempt: number }[];
  /** Holds whose pass is worth nothing from now on. */
  readonly lapsed?: readonly string[];
  /** Tasks that were started on the strength of what was withdrawn or reopened. */
  readonly flagged?: readonly string[];
  /** Tasks stopped by a halt. */
  readonly stopped?: readonly string[];
  /** Builder and inspector are one person. */
  readonly ownWork?: boolean;
};

/** One fact or decision, as it stands in the record. Its kind is the command's kind in the past. */
export type Entry = {
  readonly number: number;
  readonly id: string;
  readonly kind: string;
  readonly version: number;
  readonly by: Author;
  readonly saidBy?: string | undefined;
  readonly happenedAt: string;
  readonly receivedAt: string;
  readonly body: unknown;
  readonly breaches?: readonly Breach[];
  readonly consequence?: Consequence;
};

/** What `decide` emits: an entry that has no number yet. */
export type NewEntry = Omit<Entry, 'number'>;

/** The kind of entry each command leaves. Entries speak of the past. */
export const entryKinds = {
  'open-build': 'build-opened',
  'choose-bridge': 'bridge-chosen',
  'accept-plan': 'plan-accepted',
  'start-keep-off': 'keep-off-started',
  'pass-hold': 'hold-passed',
  'lift-halt': 'halt-lifted',
  'reopen-task': 'task-reopened',
  'settle-task': 'task-settled',
  'set-confidence': 'confidence-set',
  'set-asked-for': 'asked-for-set',
  'tell-started': 'task-started',
  'tell-finished': 'task-finished',
  'tell-stopped': 'task-stopped',
  'tell-resumed': 'task-resumed',
  'tell-part': 'task-part-done',
  'tell-strength': 'strength-told',
  'tell-off': 'off-told',
  'tell-clear': 'clear-told',
  'tell-load-in': 'load-came',
  'tell-load-late': 'load-late',
  'tell-short': 'part-short',
  'tell-hurt': 'person-hurt',
  'tell-near-miss': 'near-miss-told',
  'tell-water': 'water-told',
  'tell-wind': 'wind-told',
  'tell-relief': 'crew-relieved',
  'fail-hold': 'hold-failed',
  halt: 'halt-called',
  'acknowledge-halt': 'halt-acknowledged',
  withdraw: 'tell-withdrawn',
} as const satisfies Record<CommandKind, string>;

export type EntryKind = (typeof entryKinds)[CommandKind];

/** The body of an entry is the body of the command that left it. */
export type EntryBody<Kind extends CommandKind> = CommandBody<Kind>;
