import { type Static, Type } from 'typebox';
import { Author, type CommandBody, type CommandKind } from './command.ts';

/** Rules that a told fact broke. The fact stands; the breach is shown to leader and chief at once. */
export const Breach = Type.Object(
  {
    rule: Type.Union([
      Type.Literal('halt'),
      Type.Literal('keep-off'),
      Type.Literal('order'),
      Type.Literal('hold'),
    ]),
    /** One sentence: what was broken, by what. */
    sentence: Type.String(),
    /** The task, hold or zone concerned. */
    of: Type.Array(Type.String()),
  },
  { additionalProperties: false },
);
export type Breach = Static<typeof Breach>;

/** What a command causes beyond itself. Entries carry results, never recipes. */
export const Consequence = Type.Object(
  {
    /** Tasks that come back, each with its new attempt. */
    redo: Type.Optional(
      Type.Array(
        Type.Object(
          { task: Type.String(), attempt: Type.Integer({ minimum: 1 }) },
          { additionalProperties: false },
        ),
      ),
    ),
    /** Holds whose pass is worth nothing from now on. */
    lapsed: Type.Optional(Type.Array(Type.String())),
    /** Tasks that were started on the strength of what was withdrawn or reopened. */
    flagged: Type.Optional(Type.Array(Type.String())),
    /** Tasks stopped by a halt. */
    stopped: Type.Optional(Type.Array(Type.String())),
    /** Builder and inspector are one person. */
    ownWork: Type.Optional(Type.Boolean()),
    /** Keys of measures outside a hard limit, passed by concession. */
    beyond: Type.Optional(Type.Array(Type.String())),
    /** Keys of measures inside the limits and outside the range where they ought to lie. */
    outside: Type.Optional(Type.Array(Type.String())),
  },
  { additionalProperties: false },
);
export type Consequence = Static<typeof Consequence>;

/** One fact or decision, as it stands in the record. Its kind is the command's kind in the past. */
export const Entry = Type.Object(
  {
    number: Type.Integer({ minimum: 1 }),
    id: Type.String(),
    kind: Type.String(),
    version: Type.Integer({ minimum: 1 }),
    by: Author,
    /** By radio: who said it. */
    saidBy: Type.Optional(Type.Unsafe<string | undefined>(Type.String())),
    happenedAt: Type.String(),
    receivedAt: Type.String(),
    body: Type.Unknown(),
    breaches: Type.Optional(Type.Array(Breach)),
    consequence: Type.Optional(Consequence),
  },
  { additionalProperties: false },
);
export type Entry = Static<typeof Entry>;

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
  'set-doubt': 'doubt-set',
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
