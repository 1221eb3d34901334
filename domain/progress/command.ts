import { type Static, Type } from 'typebox';
import { Bridge } from '../bridge/bridge.ts';
import { Ground } from '../bridge/ground.ts';
import { Doubt } from '../forecast/doubt/doubt.ts';
import { Plan } from '../schedule/plan.ts';
import { Bank } from '../tasks/effect.ts';
import { Id } from '../tasks/task.ts';
import { Work } from '../tasks/work.ts';

const words = Type.String({ maxLength: 400 });
const person = Type.String({ minLength: 1, maxLength: 60 });
const count = Type.Integer({ minimum: 0, maximum: 500 });

/** The word of a named higher authority, from off the site, that a value outside a kit's hard limit may stand. */
export const Concession = Type.Object(
  {
    name: person,
    /** Post or office by which this person may say so. */
    authority: Type.String({ minLength: 1, maxLength: 80 }),
    reason: Type.String({ minLength: 1, maxLength: 400 }),
  },
  { additionalProperties: false },
);
export type Concession = Static<typeof Concession>;

function body<Properties extends Parameters<typeof Type.Object>[0]>(properties: Properties) {
  return Type.Object(properties, { additionalProperties: false });
}

/** Bodies of the asks: they can be refused. */
export const asks = {
  /** Opens the record. Carries everything, so that the record stands alone. */
  'open-build': body({
    name: Type.String({ minLength: 1, maxLength: 80 }),
    unit: Type.String({ maxLength: 80 }),
    /** ISO 8601 UTC: planned start of work. */
    start: Type.String(),
    /** ISO 8601 UTC: when traffic is wanted; null when nobody said. */
    askedFor: Type.Union([Type.String(), Type.Null()]),
    zone: Type.String(),
    confidence: Type.Number({ minimum: 0.5, maximum: 0.99 }),
    program: Type.String(),
    ground: Type.Union([Ground, Type.Null()]),
    bridge: Type.Union([Bridge, Type.Null()]),
    work: Work,
  }),
  /** Measures again and chooses a bridge; only before any work has been told. Carries the whole order of work. */
  'choose-bridge': body({ ground: Ground, bridge: Bridge, work: Work }),
  /** Accepts a plan together with the changes of work it was made for. `basis` is the record number it was made on. */
  'accept-plan': body({ work: Work, plan: Plan, basis: Type.Integer({ minimum: 0 }), gain: words }),
  'start-keep-off': body({ task: Id }),
  'pass-hold': body({
    task: Id,
    name: person,
    values: Type.Record(Type.String(), Type.Union([Type.Number(), Type.Boolean()])),
    remark: words,
    /** Why it passes with values outside the range where they ought to lie. */
    reason: Type.Optional(Type.Unsafe<string | undefined>(words)),
    /** For values outside a hard limit, and only for those. */
    concession: Type.Optional(Type.Unsafe<Concession | undefined>(Concession)),
  }),
  'lift-halt': body({ name: person }),
  /** The leader finds finished work wrong: it comes back, with what the leader adds to it. */
  'reopen-task': body({ task: Id, why: words, also: Type.Array(Id) }),
  /** The leader decides between two tells. */
  'settle-task': body({
    task: Id,
    status: Type.Union([Type.Literal('done'), Type.Literal('stopped')]),
  }),
  'set-confidence': body({ confidence: Type.Number({ minimum: 0.5, maximum: 0.99 }) }),
  'set-asked-for': body({ askedFor: Type.Union([Type.String(), Type.Null()]) }),
  /** What the leader holds to be in doubt, whole: from now on every forecast is made with it. */
  'set-doubt': body({ doubt: Doubt }),
} as const;

/** Bodies of the tells: facts. Refused only for identity, role or form. `crew` is whose fact it is. */
export const tells = {
  'tell-started': body({ task: Id, crew: Id }),
  'tell-finished': body({ task: Id, crew: Id }),
  'tell-stopped': body({ task: Id, crew: Id, why: words }),
  'tell-resumed': body({ task: Id, crew: Id }),
  'tell-part': body({ task: Id, crew: Id, part: Type.Number({ minimum: 0, maximum: 1 }) }),
  'tell-strength': body({ crew: Id, fit: count }),
  /** "Off, 7 of 7", for the keep-off task that is to start. */
  'tell-off': body({ task: Id, crew: Id, off: count, of: count }),
  /** A named person on a bank says that the zones are empty and gives the head count. */
  'tell-clear': body({ task: Id, bank: Bank, name: person, people: count }),
  'tell-load-in': body({ load: Id }),
  'tell-load-late': body({
    load: Id,
    minutes: Type.Number({ minimum: 0, maximum: 2880 }),
    why: words,
  }),
  'tell-short': body({ part: words, count: count, task: Type.Optional(Id) }),
  'tell-hurt': body({ crew: Id, what: words, outOfWork: Type.Boolean() }),
  'tell-near-miss': body({ what: words }),
  'tell-water': body({
    rise: Type.Number({ minimum: -5, maximum: 5 }),
    level: Type.Union([Type.Number(), Type.Null()]),
  }),
  'tell-wind': body({ speed: Type.Number({ minimum: 0, maximum: 80 }) }),
  'tell-relief': body({ crew: Id }),
  'fail-hold': body({
    task: Id,
    name: person,
    values: Type.Record(Type.String(), Type.Union([Type.Number(), Type.Boolean()])),
    why: words,
  }),
  halt: body({ why: words }),
  /** The crew has loads down and stands clear, so many of so many. */
  'acknowledge-halt': body({ crew: Id, people: count, of: count }),
  /** Voids one tell, by its author within ten minutes or by the leader; never a halt. `entry` is its number. */
  withdraw: body({ entry: Type.Integer({ minimum: 1 }), why: words }),
} as const;

export const bodies = { ...asks, ...tells } as const;

export type Ask = keyof typeof asks;
export type Tell = keyof typeof tells;
export type CommandKind = keyof typeof bodies;
export type CommandBody<Kind extends CommandKind> = Static<(typeof bodies)[Kind]>;

export const Role = Type.Union([
  Type.Literal('leader'),
  Type.Literal('log'),
  Type.Literal('chief'),
  Type.Literal('inspector'),
  Type.Literal('commander'),
]);
export type Role = Static<typeof Role>;

/** Text that may be absent or undefined: devices leave it out either way. */
const maybeText = Type.Optional(Type.Unsafe<string | undefined>(Type.String()));

/** Who sends a command: the link they came by. A chief's link names its crew. */
export const Author = Type.Object(
  { role: Role, name: Type.String(), crew: maybeText },
  { additionalProperties: false },
);
export type Author = Static<typeof Author>;

/** A command as `decide` takes it. Times are ISO 8601 UTC; `happenedAt` is already corrected for the device's skew. */
export type Command = {
  [Kind in CommandKind]: {
    /** Minted once on the device, 128 bit, 32 hex digits. */
    readonly id: string;
    readonly kind: Kind;
    readonly body: CommandBody<Kind>;
    readonly by: Author;
    /** By radio: who said it, when the log keeper entered it for somebody. */
    readonly saidBy?: string | undefined;
    readonly happenedAt: string;
    readonly receivedAt: string;
  };
}[CommandKind];
