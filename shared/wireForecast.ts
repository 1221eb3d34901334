import { type Static, Type } from 'typebox';
import { Doubt } from '#domain/forecast/doubt/doubt.ts';
import { Milestone } from '#domain/forecast/forecast.ts';
import { CommandId, Instant } from './instant.ts';
import { ForecastFrame } from './wire.ts';

const closed = { additionalProperties: false } as const;
const instantOrNone = Type.Union([Instant, Type.Null()]);

/** One cause that moved the opening. Minutes: above 0 it opens later. What it says of a crew's pace, only a leader reads. */
export const MoveCause = Type.Object(
  {
    kind: Type.Union([
      Type.Literal('plan'),
      Type.Literal('stores'),
      Type.Literal('strength'),
      Type.Literal('doubt'),
      Type.Literal('progress'),
      Type.Literal('pace'),
    ]),
    minutes: Type.Number(),
    /** "12 min later: Truck 5 12 min late." */
    sentence: Type.String(),
  },
  closed,
);
export type MoveCause = Static<typeof MoveCause>;

/**
 * What moved the opening that the headline promises between two forecasts. `number` and `at` are of the later one,
 * `since` of the earlier. Minutes: above 0 it opens later. The causes add up to `minutes`, small ones left out.
 */
export const ForecastMove = Type.Object(
  {
    number: Type.Integer({ minimum: 0 }),
    at: Instant,
    since: Type.Object({ number: Type.Integer({ minimum: 0 }), at: Instant }, closed),
    /** The confidence of the headline then, 0.5 to 0.99. */
    confidence: Type.Number(),
    minutes: Type.Number(),
    /** The largest first. */
    causes: Type.Array(MoveCause),
  },
  closed,
);
export type ForecastMove = Static<typeof ForecastMove>;

/** When a hold, a landing or another marked task is done, with its name and the plan's time. Minutes after the start of the build. */
export const MilestoneShown = Type.Object(
  {
    ...Milestone.properties,
    name: Type.String(),
    planned: Type.Union([Type.Number(), Type.Null()]),
    done: Type.Boolean(),
  },
  closed,
);
export type MilestoneShown = Static<typeof MilestoneShown>;

/** How often, 0 to 1, a task or crew was on the chain that set the opening. */
export const OnChainShown = Type.Object(
  { id: Type.String(), name: Type.String(), share: Type.Number() },
  closed,
);
export type OnChainShown = Static<typeof OnChainShown>;

/** One condition, used or not: what the minutes are multiplied by, and where that comes from. */
export const ConditionShown = Type.Object(
  {
    name: Type.Union([
      Type.Literal('weather'),
      Type.Literal('training'),
      Type.Literal('site'),
      Type.Literal('dress'),
      Type.Literal('heat'),
      Type.Literal('light'),
    ]),
    on: Type.Boolean(),
    factor: Type.Number(),
    source: Type.String(),
    words: Type.String(),
  },
  closed,
);
export type ConditionShown = Static<typeof ConditionShown>;

/** One source of doubt beside the conditions, on or off: what it assumes in words, and where that comes from. */
export const DoubtSource = Type.Object(
  {
    kind: Type.Union([
      Type.Literal('own'),
      Type.Literal('day'),
      Type.Literal('crews'),
      Type.Literal('event'),
      Type.Literal('learning'),
    ]),
    /** Of an event, its id in the doubt. */
    event: Type.Optional(Type.String()),
    name: Type.String(),
    on: Type.Boolean(),
    words: Type.String(),
    source: Type.String(),
  },
  closed,
);
export type DoubtSource = Static<typeof DoubtSource>;

/** The light of one day at the site: instants, null where the sun does not pass that height. */
export const DayLight = Type.Object(
  {
    /** BMNT and BMCT: begin of morning nautical and civil twilight. */
    nauticalDawn: instantOrNone,
    civilDawn: instantOrNone,
    sunrise: instantOrNone,
    sunset: instantOrNone,
    /** EECT and EENT: end of evening civil and nautical twilight. */
    civilDusk: instantOrNone,
    nauticalDusk: instantOrNone,
    polar: Type.Union([Type.Literal('day'), Type.Literal('night'), Type.Null()]),
    /** Share of the moon's disc that is lit, 0 to 1. */
    moon: Type.Number(),
  },
  closed,
);
export type DayLight = Static<typeof DayLight>;

export const LightShown = Type.Object(
  {
    days: Type.Array(DayLight),
    /** When it is dark, from EECT to BMCT, in minutes after the start of the build. */
    dark: Type.Array(Type.Object({ from: Type.Number(), to: Type.Number() }, closed)),
    sentence: Type.String(),
    moonSentence: Type.String(),
  },
  closed,
);
export type LightShown = Static<typeof LightShown>;

/**
 * GET /api/builds/:build/forecast/full: the forecast with all that it rests on. The spread, the dots, the chance are in
 * `frame.forecast`. `last` and `start` say what moved it since the last move worth a word and since the first forecast.
 */
export const FullForecast = Type.Object(
  {
    frame: Type.Union([ForecastFrame, Type.Null()]),
    confidence: Type.Number(),
    milestones: Type.Array(MilestoneShown),
    tasksOnChain: Type.Array(OnChainShown),
    crewsOnChain: Type.Array(OnChainShown),
    /** The doubt in force; `chosen` false while it is the usual one that nobody has changed. */
    doubt: Doubt,
    chosen: Type.Boolean(),
    sources: Type.Array(DoubtSource),
    conditions: Type.Array(ConditionShown),
    /** The rule in words: "Conditions are multiplied: 1.3 x 1.2 = 1.56." */
    conditionsSentence: Type.String(),
    /** Null when nobody gave the place. */
    light: Type.Union([LightShown, Type.Null()]),
    moved: Type.Object(
      {
        last: Type.Union([ForecastMove, Type.Null()]),
        start: Type.Union([ForecastMove, Type.Null()]),
      },
      closed,
    ),
  },
  closed,
);
export type FullForecast = Static<typeof FullForecast>;

/** One forecast as it was told. Minutes after the start of the build; `promised` is at the confidence of the headline now. */
export const HistoryPoint = Type.Object(
  {
    number: Type.Integer({ minimum: 0 }),
    at: Instant,
    promised: Type.Number(),
    p10: Type.Number(),
    p50: Type.Number(),
    p80: Type.Number(),
    p90: Type.Number(),
    chance: Type.Union([Type.Number(), Type.Null()]),
  },
  closed,
);
export type HistoryPoint = Static<typeof HistoryPoint>;

/** GET /api/builds/:build/forecast/history: how the forecast itself moved, oldest first, and the moves to mark in it. */
export const ForecastHistory = Type.Object(
  {
    confidence: Type.Number(),
    points: Type.Array(HistoryPoint),
    moves: Type.Array(ForecastMove),
  },
  closed,
);
export type ForecastHistory = Static<typeof ForecastHistory>;

/** How far each lever is pulled where the leader says so: people, minutes, and times as long. */
export const LeverSizesWanted = Type.Partial(
  Type.Object(
    {
      people: Type.Integer({ minimum: 1, maximum: 6 }),
      truckEarlier: Type.Number({ minimum: 1, maximum: 600 }),
      vehicleWait: Type.Number({ minimum: 1, maximum: 600 }),
      winch: Type.Number({ minimum: 1, maximum: 10 }),
    },
    closed,
  ),
  closed,
);
export type LeverSizesWanted = Static<typeof LeverSizesWanted>;

/**
 * POST /api/builds/:build/forecast/moves: what would move the opening. `progress` events with `job` go to the pages of
 * the link that asked; DELETE .../forecast/moves/:job, or giving up the request, stops it.
 */
export const MovesRequest = Type.Object(
  { job: Type.Optional(CommandId), sizes: Type.Optional(LeverSizesWanted) },
  closed,
);
export type MovesRequest = Static<typeof MovesRequest>;

/** What one lever does. Minutes at even chance and at four in five: above 0 it opens earlier. */
export const LeverMoved = Type.Object(
  {
    kind: Type.Union([
      Type.Literal('people'),
      Type.Literal('truck-earlier'),
      Type.Literal('lights'),
      Type.Literal('hold-prepared'),
      Type.Literal('slow-case'),
      Type.Literal('vehicle-wait'),
      Type.Literal('vehicle-winch'),
    ]),
    of: Type.Optional(Type.String()),
    words: Type.String(),
    gain50: Type.Number(),
    gain80: Type.Number(),
    /** "Two more people in Left girder: 6 min earlier at even chance, 8 min earlier at four in five." */
    sentence: Type.String(),
  },
  closed,
);
export type LeverMoved = Static<typeof LeverMoved>;

export const MovesReply = Type.Object(
  {
    job: CommandId,
    /** Record number and time that it was seen from. */
    number: Type.Integer({ minimum: 0 }),
    at: Instant,
    /** By what it gains or costs at four in five, the most first. */
    ranked: Type.Array(LeverMoved),
    cannotHelp: Type.Array(LeverMoved),
    cannotHurt: Type.Array(LeverMoved),
  },
  closed,
);
export type MovesReply = Static<typeof MovesReply>;

/** GET /api/builds/:build/pace, for the leader alone: above 1 is slow; four chances in five that it lies from-to. */
export const PaceReply = Type.Object(
  {
    crews: Type.Array(
      Type.Object(
        {
          crew: Type.String(),
          name: Type.String(),
          factor: Type.Number(),
          from: Type.Number(),
          to: Type.Number(),
          /** "6 min for each 5 planned". */
          words: Type.String(),
          /** Finished tasks of the crew that were timed. */
          tasks: Type.Integer(),
        },
        closed,
      ),
    ),
    /** Ticks told in one go, which say little of pace. */
    inOneGo: Type.Integer(),
  },
  closed,
);
export type PaceReply = Static<typeof PaceReply>;
