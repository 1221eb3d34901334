import { type Static, type TSchema, Type } from 'typebox';
import { Bridge } from '#domain/bridge/bridge.ts';
import { Instant } from './instant.ts';
import { BridgeRequest } from './wireBuilds.ts';

const closed = { additionalProperties: false } as const;
function listOf<Item extends TSchema>(item: Item) {
  return Type.ReadonlyType(Type.Array(item));
}

const orNone = Type.Union([Type.Number(), Type.Null()]);
const count = Type.Integer({ minimum: 0 });
const bays = listOf(Type.Integer({ minimum: 1 }));

/** What a roller, the landing or the tail carries. Metres ahead of the front rollers, newtons. */
const reaction = {
  of: Type.Union([
    Type.Literal('landing'),
    Type.Literal('front'),
    Type.Literal('rear'),
    Type.Literal('tail'),
  ]),
  at: Type.Number(),
  newtons: Type.Number(),
};
const ReactionNow = Type.Object(reaction, closed);

/** What it takes to move the bridge, newtons. */
const PushNow = Type.Union([
  Type.Object(
    {
      newtons: Type.Number(),
      holdBack: Type.Number(),
      people: orNone,
      vehicle: Type.Union([Type.Boolean(), Type.Null()]),
    },
    closed,
  ),
  Type.Null(),
]);

/** One stage of a launch with its statics, as `stageStatics` explains them. Metres, kilograms and newtons. */
export const StageLine = Type.Object(
  {
    stage: Type.Integer({ minimum: 1 }),
    bays: count,
    decked: bays,
    nose: count,
    counterweight: Type.Number(),
    metres: Type.Number(),
    moved: Type.Number(),
    kilograms: Type.Number(),
    lands: Type.Boolean(),
    centreOfGravity: Type.Number(),
    margin: Type.Number(),
    marginInto: Type.Number(),
    ratio: orNone,
    reactions: listOf(ReactionNow),
    mostReactions: listOf(Type.Object({ ...reaction, into: Type.Number() }, closed)),
    overhang: Type.Number(),
    push: PushNow,
    tipSag: orNone,
    meets: orNone,
    keepOff: Type.Object({ from: Type.Number(), to: Type.Number() }, closed),
  },
  closed,
);
export type StageLine = Static<typeof StageLine>;

/** One bridge of the choice. Metres, minutes and tonnes. */
const ChoiceLine = Type.Object(
  {
    bays: count,
    length: Type.Number(),
    nose: count,
    roomNeeded: Type.Number(),
    bearing: Bridge.properties.bearing,
    loadClass: Type.Integer(),
    classMargin: Type.Integer(),
    roomOver: orNone,
    moves: count,
    people: count,
    onSite: count,
    tasks: count,
    loads: count,
    tonnes: Type.Number(),
    leastMinutes: Type.Number(),
    against: Type.Union([Type.String(), Type.Null()]),
  },
  closed,
);

/** POST /api/bridges: the design, its launch, what else the kit could do there, and what the ground asks for. */
export const BridgeReply = Type.Object(
  {
    bridge: Bridge,
    work: Type.Object(
      {
        tasks: Type.Integer(),
        holds: Type.Integer(),
        /** People of the platoon's own crews. */
        people: Type.Integer(),
        loads: Type.Integer(),
      },
      closed,
    ),
    stages: listOf(StageLine),
    choice: Type.Object(
      {
        /** The advised one first. */
        fitting: listOf(ChoiceLine),
        ruledOut: listOf(
          Type.Object(
            {
              bays: count,
              nose: Type.Union([Type.Integer(), Type.Null()]),
              limits: listOf(Type.String()),
            },
            closed,
          ),
        ),
      },
      closed,
    ),
    /** What the ground asks of the work, in sentences. */
    advice: listOf(
      Type.Object(
        {
          code: Type.String(),
          bank: Type.Union([Type.Literal('near'), Type.Literal('far'), Type.Null()]),
          sentence: Type.String(),
        },
        closed,
      ),
    ),
    /** Unknown numbers that the answer hangs on, by their place in the ground. */
    hangsOn: listOf(Type.String()),
  },
  closed,
);
export type BridgeReply = Static<typeof BridgeReply>;

/** POST /api/bridges/times: `start` gives the daylight, where the ground has a place. */
export const TimesRequest = Type.Object(
  {
    ground: BridgeRequest.properties.ground,
    kit: BridgeRequest.properties.kit,
    start: Type.Optional(Instant),
  },
  closed,
);
export type TimesRequest = Static<typeof TimesRequest>;

/** Event `choice`: when one bridge of the choice opens, minutes after the start; null where it cannot be planned. */
export const ChoiceTimesFrame = Type.Object(
  {
    bays: count,
    nose: count,
    times: Type.Union([
      Type.Object({ planned: Type.Number(), p50: Type.Number(), p80: Type.Number() }, closed),
      Type.Null(),
    ]),
  },
  closed,
);
export type ChoiceTimesFrame = Static<typeof ChoiceTimesFrame>;

/** Event `progress`: parts done of all. */
export const TimesProgressFrame = Type.Object({ done: Type.Number(), of: Type.Number() }, closed);
export type TimesProgressFrame = Static<typeof TimesProgressFrame>;

/** What holds a bridge that has stopped. Metres ahead of the front rollers, newtons. */
const Held = Type.Object(
  {
    centre: Type.Number(),
    tail: Type.Number(),
    landed: Type.Boolean(),
    reactions: listOf(ReactionNow),
    margin: Type.Number(),
    moved: Type.Number(),
    kilograms: Type.Number(),
    ratio: orNone,
    sag: orNone,
    push: PushNow,
    mayGoOn: Type.Number(),
  },
  closed,
);

/** GET /api/builds/:build/stages: the launch of the build's bridge; with a stage, what holds it there and the way back. */
export const StagesReply = Type.Object(
  {
    stages: listOf(StageLine),
    held: Type.Union([Held, Type.Null()]),
    pullBack: listOf(
      Type.Object(
        {
          stage: Type.Integer({ minimum: 1 }),
          metres: Type.Number(),
          noseOn: bays,
          counterweight: Type.Number(),
          bays: count,
          decked: bays,
          margin: Type.Number(),
          decksOff: bays,
          baysOff: bays,
        },
        closed,
      ),
    ),
  },
  closed,
);
export type StagesReply = Static<typeof StagesReply>;
