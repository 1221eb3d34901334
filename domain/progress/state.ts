import { type Static, Type } from 'typebox';
import { Bridge } from '../bridge/bridge.ts';
import { Ground } from '../bridge/ground.ts';
import { Doubt } from '../forecast/doubt/doubt.ts';
import { Plan } from '../schedule/plan.ts';
import { Work } from '../tasks/work.ts';
import { Author, Concession } from './command.ts';
import { CrewState } from './crewState.ts';
import { Breach } from './entry.ts';
import { entry, number, numberOrNone, strict, text, textOrNone } from './stateFields.ts';

/** Raised whenever `evolve` would fold the same record into something else. */
export const foldVersion = 1;

export const TaskStatus = Type.Union([
  Type.Literal('to-come'),
  Type.Literal('at-work'),
  Type.Literal('stopped'),
  Type.Literal('done'),
]);
export type TaskStatus = Static<typeof TaskStatus>;

/** A live tell about a task in its present attempt, in order of arrival. Status is derived from these alone. */
export const TaskTell = strict({
  entry,
  kind: Type.Union([
    Type.Literal('started'),
    Type.Literal('finished'),
    Type.Literal('stopped'),
    Type.Literal('resumed'),
    Type.Literal('part'),
    Type.Literal('settled'),
    Type.Literal('halted'),
  ]),
  /** Whose fact; empty when it holds for every crew of the task: `settled`, `halted`, a keep-off start that was granted. */
  crew: text,
  by: Author,
  /** By radio: who said it. */
  saidBy: Type.Optional(text),
  at: text,
  why: Type.Optional(text),
  part: Type.Optional(number),
  settled: Type.Optional(Type.Union([Type.Literal('done'), Type.Literal('stopped')])),
});
export type TaskTell = Static<typeof TaskTell>;

/** Where one crew stands with a task. A joint task has one of these per crew. */
export const Share = strict({
  crew: text,
  status: TaskStatus,
  startedAt: textOrNone,
  finishedAt: textOrNone,
  why: textOrNone,
  /** 0 to 1. */
  part: number,
});
export type Share = Static<typeof Share>;

/** `none` for a task that is no hold. */
export const HoldStatus = Type.Union([
  Type.Literal('none'),
  Type.Literal('open'),
  Type.Literal('passed'),
  Type.Literal('failed'),
  Type.Literal('lapsed'),
]);
export type HoldStatus = Static<typeof HoldStatus>;

const Values = Type.Record(Type.String(), Type.Union([Type.Number(), Type.Boolean()]));

/** What was found at a hold, or what made its pass worthless. The last one is what holds. */
export const Inspection = strict({
  entry,
  kind: Type.Union([Type.Literal('passed'), Type.Literal('failed'), Type.Literal('lapsed')]),
  at: text,
  /** The inspector's name; empty for a lapse. */
  name: text,
  values: Values,
  /** The remark of a pass, the reason of a failure or lapse. */
  why: text,
  ownWork: Type.Boolean(),
  /** Who let values outside a hard limit stand, and the keys of those. */
  concession: Type.Optional(strict({ ...Concession.properties, of: Type.Array(text) })),
  /** Why the inspector let values stand outside the range where they ought to lie, and the keys of those. */
  allowed: Type.Optional(strict({ reason: text, of: Type.Array(text) })),
});
export type Inspection = Static<typeof Inspection>;

/** An attempt that came to nothing: a hold failed or finished work was found wrong, by that entry. */
export const ClosedAttempt = strict({
  entry,
  attempt: Type.Integer({ minimum: 1 }),
  startedAt: textOrNone,
  finishedAt: textOrNone,
  /** When it was found wrong: what happened before then belongs to it, however late it is told. */
  closedAt: text,
  tells: Type.Array(TaskTell),
});
export type ClosedAttempt = Static<typeof ClosedAttempt>;

export const TaskState = strict({
  status: TaskStatus,
  /** 1, and one more for each redo. */
  attempt: Type.Integer({ minimum: 1 }),
  startedAt: textOrNone,
  finishedAt: textOrNone,
  /** Why it is stopped; for a hold why it failed or lapsed. */
  why: textOrNone,
  part: number,
  shares: Type.Array(Share),
  /** One says done, another stopped: the worse holds until the leader settles it. */
  disputed: Type.Boolean(),
  /** Started on the strength of something since withdrawn or reopened. */
  flagged: Type.Boolean(),
  /** The tasks that were withdrawn or reopened under it and are not done again. */
  flaggedFor: Type.Array(Type.String()),
  hold: HoldStatus,
  passedBy: textOrNone,
  ownWork: Type.Boolean(),
  values: Values,
  /** How many times the hold failed. */
  failures: Type.Integer({ minimum: 0 }),
  tells: Type.Array(TaskTell),
  inspections: Type.Array(Inspection),
  earlier: Type.Array(ClosedAttempt),
});
export type TaskState = Static<typeof TaskState>;

/** Head counts and "seen clear" told for a keep-off task that is to start. Void after it, after a halt, and when work starts in its zones. */
export const Clearance = strict({
  off: Type.Record(Type.String(), strict({ off: number, of: number, at: text, entry })),
  clear: strict({
    near: Type.Optional(strict({ name: text, people: number, at: text, entry })),
    far: Type.Optional(strict({ name: text, people: number, at: text, entry })),
  }),
});
export type Clearance = Static<typeof Clearance>;

export const Halt = strict({
  entry,
  by: Author,
  why: text,
  at: text,
  /** When the first of several calls in a row came: work told from then on breaks the halt. */
  since: text,
  /** Crews that said "loads down, clear", and how many they counted. */
  acknowledged: Type.Record(Type.String(), strict({ people: number, of: number, at: text, entry })),
});
export type Halt = Static<typeof Halt>;

/** A live tell about a load, in order of arrival. */
export const LoadTell = strict({
  entry,
  kind: Type.Union([Type.Literal('late'), Type.Literal('in')]),
  /** When it came, or is now expected. */
  at: text,
  /** When it was told. */
  toldAt: text,
  why: textOrNone,
});
export type LoadTell = Static<typeof LoadTell>;

export const LoadState = strict({
  status: Type.Union([Type.Literal('expected'), Type.Literal('late'), Type.Literal('in')]),
  /** ISO 8601 UTC: when it came or is now expected. */
  at: text,
  why: textOrNone,
  /** When the order of work expects it, and the entry that set this: times told before it are superseded. */
  planned: strict({ at: text, entry }),
  tells: Type.Array(LoadTell),
});
export type LoadState = Static<typeof LoadState>;

/** A thing worth saying in a report. */
export const Event = strict({
  entry,
  kind: Type.Union([
    Type.Literal('hurt'),
    Type.Literal('near-miss'),
    Type.Literal('short'),
    Type.Literal('breach'),
    Type.Literal('halt'),
    Type.Literal('hold-failed'),
    Type.Literal('conceded'),
    Type.Literal('reopened'),
  ]),
  at: text,
  sentence: text,
  task: Type.Optional(text),
  crew: Type.Optional(text),
  breach: Type.Optional(Breach),
  /** The tell that broke the rule was withdrawn: the breach stays in sight. */
  withdrawn: Type.Optional(Type.Literal(true)),
});
export type Event = Static<typeof Event>;

/** The last entries that can be withdrawn: the tells of the ten minutes before the last entry. Older ones are the leader's to withdraw, by number. */
export const WithdrawableTell = strict({
  entry,
  kind: text,
  by: Author,
  saidBy: textOrNone,
  receivedAt: text,
  body: Type.Unknown(),
});
export type WithdrawableTell = Static<typeof WithdrawableTell>;

/** A reading: told by somebody at that time. */
export const WaterTell = strict({ entry, at: text, rise: number, level: numberOrNone });
export type WaterTell = Static<typeof WaterTell>;
export const WindTell = strict({ entry, at: text, speed: number });
export type WindTell = Static<typeof WindTell>;

/** All that is known of a build: the fold of its record. Plain data. */
export const BuildState = strict({
  fold: Type.Integer(),
  /** Number of the last entry folded; 0 before the build is opened. */
  number: entry,
  name: text,
  unit: text,
  program: text,
  start: text,
  askedFor: textOrNone,
  zone: text,
  confidence: number,
  /** What the leader set; absent while the usual doubt holds. */
  doubt: Type.Optional(Doubt),
  ground: Type.Union([Ground, Type.Null()]),
  bridge: Type.Union([Bridge, Type.Null()]),
  work: Work,
  plan: Type.Union([Plan, Type.Null()]),
  /** How many plans have been accepted. */
  planCount: Type.Integer({ minimum: 0 }),
  planAcceptedAt: textOrNone,
  /** Record number of the last entry that changed work, crews or loads: a plan made on an older one is stale. */
  workNumber: entry,
  tasks: Type.Record(Type.String(), TaskState),
  crews: Type.Record(Type.String(), CrewState),
  loads: Type.Record(Type.String(), LoadState),
  clearances: Type.Record(Type.String(), Clearance),
  halt: Type.Union([Halt, Type.Null()]),
  events: Type.Array(Event),
  /** The last reading, metres per hour and metres; the readings it was taken from. */
  water: strict({
    rise: numberOrNone,
    level: numberOrNone,
    at: textOrNone,
    tells: Type.Array(WaterTell),
  }),
  /** The last reading, metres per second; the readings it was taken from. */
  wind: strict({ speed: numberOrNone, at: textOrNone, tells: Type.Array(WindTell) }),
  tells: Type.Array(WithdrawableTell),
  /** Numbers of the entries that were withdrawn. */
  withdrawn: Type.Array(entry),
  /** Entries of kinds this program does not know: kept in the record and counted here. */
  unknown: Type.Integer({ minimum: 0 }),
});
export type BuildState = Static<typeof BuildState>;

/** The state before the record is opened: every fold starts here. */
export const emptyBuild: BuildState = {
  fold: foldVersion,
  number: 0,
  name: '',
  unit: '',
  program: '',
  start: '',
  askedFor: null,
  zone: 'UTC',
  confidence: 0.9,
  ground: null,
  bridge: null,
  work: { tasks: [], links: [], crews: [], zones: [], loads: [] },
  plan: null,
  planCount: 0,
  planAcceptedAt: null,
  workNumber: 0,
  tasks: {},
  crews: {},
  loads: {},
  clearances: {},
  halt: null,
  events: [],
  water: { rise: null, level: null, at: null, tells: [] },
  wind: { speed: null, at: null, tells: [] },
  tells: [],
  withdrawn: [],
  unknown: 0,
};
