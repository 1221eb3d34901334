import { type Static, Type } from 'typebox';

/**
 * Why a task cannot start earlier in this plan. `task` is the one it waits for, `of` the crew, zone, equipment or load
 * concerned.
 */
export const Reason = Type.Object(
  {
    kind: Type.Union([
      Type.Literal('start'), // the build starts then
      Type.Literal('link'), // what it comes after
      Type.Literal('crew'), // people come free from `task`
      Type.Literal('zone'), // room comes free from `task`, or a keep-off task leaves
      Type.Literal('equipment'), // it comes free from `task`
      Type.Literal('load'), // stores arrive
      Type.Literal('window'), // the crew comes on
      Type.Literal('crossing'), // people come from `task` on the other bank
      Type.Literal('rest'), // the crew comes back from a rest, before which the task would not have been done
      Type.Literal('light'), // it gets light
      Type.Literal('fixed'), // the leader has fixed its start
      Type.Literal('now'), // re-plan: nothing starts in the past
      Type.Literal('past'), // done or under way: it started when it did
    ]),
    task: Type.Optional(Type.String()),
    of: Type.Optional(Type.String()),
  },
  { additionalProperties: false },
);
export type Reason = Static<typeof Reason>;

/**
 * Who frees whom, who leaves which zone, who gives up which equipment: `to` starts no earlier than `wait` minutes
 * after `from` finishes.
 */
export const HandOver = Type.Object(
  {
    from: Type.String(),
    to: Type.String(),
    kind: Type.Union([Type.Literal('crew'), Type.Literal('zone'), Type.Literal('equipment')]),
    /** The crew, zone or equipment. */
    of: Type.String(),
    /** Of a crew: what these people can do, where that is why they are wanted. */
    skill: Type.Optional(Type.String()),
    /** People, room or pieces handed over. */
    people: Type.Integer({ minimum: 0 }),
    /** Minutes that must lie between finish and start, because these people cross to the other bank; absent: none. */
    wait: Type.Optional(Type.Number({ minimum: 0 })),
  },
  { additionalProperties: false },
);
export type HandOver = Static<typeof HandOver>;

/** A task as planned. `start`, `finish`, `release` are minutes after the start of the build, in whole seconds. */
export const PlannedTask = Type.Object(
  {
    task: Type.String(),
    crews: Type.Array(Type.Object({ crew: Type.String(), people: Type.Integer({ minimum: 0 }) })),
    start: Type.Number(),
    finish: Type.Number(),
    /** Not before this, whatever links and hand-overs say: stores, crew windows, now, what the leader has fixed. */
    release: Type.Number(),
    /** Minutes with these people over minutes with the usual people. */
    stretch: Type.Number(),
    reason: Reason,
  },
  { additionalProperties: false },
);
export type PlannedTask = Static<typeof PlannedTask>;

/** Crews, people, order and hand-overs. Start and finish are the earliest over links, hand-overs and releases. */
export const Plan = Type.Object(
  {
    format: Type.Literal('spanwright-plan'),
    version: Type.Literal(1),
    /** In order of planned start. */
    tasks: Type.Array(PlannedTask),
    handOvers: Type.Array(HandOver),
    /** The task whose finish is the opening. */
    opening: Type.String(),
    minutesToOpen: Type.Number(),
    /** No plan with these crews can open earlier than this, in minutes. */
    lowerBound: Type.Number(),
    shape: Type.Union([Type.Literal('pert'), Type.Literal('triangular')]),
  },
  { additionalProperties: false },
);
export type Plan = Static<typeof Plan>;
