import { type Static, Type } from 'typebox';
import { Fault } from '#domain/fault.ts';
import { Forecast } from '#domain/forecast/forecast.ts';
import { Author, Role } from '#domain/progress/command.ts';
import { Breach } from '#domain/progress/entry.ts';
import { BuildState, TaskState } from '#domain/progress/state.ts';
import { refusalCodes } from '#domain/refusal.ts';
import { Plan } from '#domain/schedule/plan.ts';
import { Change } from '#domain/tasks/change.ts';
import { Id } from '#domain/tasks/task.ts';
import { CommandId, Instant } from './instant.ts';
import { wireKinds } from './wireBodies.ts';
import { OfferFrame, PlanNews, PlanOffer } from './wirePlan.ts';

const closed = { additionalProperties: false } as const;

function oneOf<Word extends string>(words: readonly Word[]) {
  return Type.Unsafe<Word>(Type.Union(words.map((word) => Type.Literal(word))));
}

/** POST /api/builds/:build/commands. The schema of `body` by kind stands in `wireBodies.ts`. */
export const CommandRequest = Type.Object(
  {
    id: CommandId,
    kind: oneOf(wireKinds),
    body: Type.Unknown(),
    /** By radio: who said it, when the log keeper enters it for somebody. */
    saidBy: Type.Optional(Type.String({ minLength: 1, maxLength: 60 })),
    /** Device clock. */
    happenedAt: Instant,
    /** Device clock at sending: the server takes the device's skew from it. */
    sentAt: Instant,
  },
  closed,
);
export type CommandRequest = Static<typeof CommandRequest>;

/** The body of every reply that is not a 2xx, and of a refused receipt. */
export const RefusalReply = Type.Object(
  {
    code: oneOf(refusalCodes),
    sentence: Type.String(),
    of: Type.Optional(Type.ReadonlyType(Type.Array(Type.String()))),
    faults: Type.Optional(Type.ReadonlyType(Type.Array(Fault))),
  },
  closed,
);
export type RefusalReply = Static<typeof RefusalReply>;

/** The answer to a command; the same id again gets the same answer, byte for byte. */
export const Receipt = Type.Union([
  Type.Object(
    {
      id: CommandId,
      outcome: Type.Literal('recorded'),
      /** Number of the entry that it left. */
      entry: Type.Integer({ minimum: 1 }),
      breaches: Type.ReadonlyType(Type.Array(Breach)),
    },
    closed,
  ),
  Type.Object(
    { id: CommandId, outcome: Type.Literal('refused'), ...RefusalReply.properties },
    closed,
  ),
]);
export type Receipt = Static<typeof Receipt>;

/** A forecast as the feed carries it. `number` is the record number it was made on. */
export const ForecastFrame = Type.Object(
  {
    number: Type.Integer({ minimum: 0 }),
    at: Instant,
    forecast: Type.Union([Forecast, Type.Null()]),
    /** Why there is none: no plan yet, or the build is open. */
    why: Type.Union([Type.String(), Type.Null()]),
  },
  closed,
);
export type ForecastFrame = Static<typeof ForecastFrame>;

/** GET /api/builds/:build */
export const Snapshot = Type.Object(
  {
    build: Type.String(),
    fold: Type.Integer(),
    state: BuildState,
    you: Author,
    forecast: Type.Union([ForecastFrame, Type.Null()]),
    /** To leaders: a plan worth a look. */
    offer: Type.Optional(OfferFrame),
    /** Server clock. */
    now: Instant,
  },
  closed,
);
export type Snapshot = Static<typeof Snapshot>;

const { tasks: _tasks, ...partsOfState } = BuildState.properties;

/**
 * Frames of GET /api/builds/:build/feed?after=N (text/event-stream): `event:` is the frame's name and, for a
 * `delta`, `id:` the number. `changed` carries the changed top-level parts of the state, `tasks` only the
 * changed tasks, `lists` parts that are lists of which only the ends changed.
 */
export const DeltaFrame = Type.Object(
  {
    number: Type.Integer({ minimum: 1 }),
    fold: Type.Integer(),
    changed: Type.Partial(Type.Object(partsOfState, closed)),
    tasks: Type.Record(Type.String(), TaskState),
    /** By part: how many items to take from its front, then what to add at its end. */
    lists: Type.Optional(
      Type.Record(
        Type.String(),
        Type.Object(
          { drop: Type.Integer({ minimum: 0 }), add: Type.Array(Type.Unknown()) },
          closed,
        ),
      ),
    ),
    /** Tasks that no longer exist. */
    gone: Type.ReadonlyType(Type.Array(Type.String())),
    kind: Type.String(),
  },
  closed,
);
export type DeltaFrame = Static<typeof DeltaFrame>;

export const ProgressFrame = Type.Object(
  {
    job: Type.String(),
    done: Type.Number(),
    of: Type.Number(),
    /** Of a search for a better plan: the best plan and bound so far. */
    news: Type.Optional(PlanNews),
  },
  closed,
);
export type ProgressFrame = Static<typeof ProgressFrame>;

export const BeatFrame = Type.Object({ now: Instant }, closed);
export type BeatFrame = Static<typeof BeatFrame>;

/**
 * POST /api/builds/:build/proposals: plan again with these changes, recorded nowhere until accepted.
 * A device that wants to show progress or to cancel mints the proposal's id itself.
 */
export const ProposalRequest = Type.Object(
  {
    proposal: Type.Optional(CommandId),
    changes: Type.ReadonlyType(Type.Array(Change, { maxItems: 1000 })),
    /** Search for so long, in low priority, instead of a second: until proven, stopped, or told to take what there is. */
    seconds: Type.Optional(Type.Number({ minimum: 1, maximum: 110 })),
  },
  closed,
);
export type ProposalRequest = Static<typeof ProposalRequest>;

export const Proposal = Type.Object(
  {
    proposal: CommandId,
    /** Record number that it was made on. */
    basis: Type.Integer({ minimum: 0 }),
    /** From then on both plans are seen. */
    madeFor: Instant,
    plan: Plan,
    forecast: Forecast,
    /** The plan in force: its opening as it was accepted, and its forecast from now; null before the first plan. */
    before: Type.Union([
      Type.Object({ minutesToOpen: Type.Number(), forecast: Forecast }, closed),
      Type.Null(),
    ]),
    /** One sentence: "opens 14 min earlier; changes 5 orders for 2 crews". */
    gain: Type.String(),
    /** What the sentence is made of; null before the first plan. */
    offer: Type.Union([PlanOffer, Type.Null()]),
  },
  closed,
);
export type Proposal = Static<typeof Proposal>;

/** A link with a secret: a role for one build. */
export const LinkInfo = Type.Object(
  {
    id: Type.String(),
    role: Role,
    name: Type.String(),
    crew: Type.Optional(Id),
    withdrawn: Type.Boolean(),
  },
  closed,
);
export type LinkInfo = Static<typeof LinkInfo>;

/** A link just made. The address holds the secret: it is shown once and kept nowhere. */
export const NewLink = Type.Object({ ...LinkInfo.properties, address: Type.String() }, closed);
export type NewLink = Static<typeof NewLink>;

/** POST /api/builds/:build/links */
export const LinkRequest = Type.Object(
  {
    role: Role,
    name: Type.String({ minLength: 1, maxLength: 60 }),
    /** The crew of a chief's link. */
    crew: Type.Optional(Id),
  },
  closed,
);
export type LinkRequest = Static<typeof LinkRequest>;
