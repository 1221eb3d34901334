import { type Static, Type } from 'typebox';
import { CommandId } from './instant.ts';

const closed = { additionalProperties: false } as const;

/** What a search for a better plan tells while it runs. */
export const PlanNews = Type.Object(
  {
    /** Of the best plan so far, minutes after the start. */
    minutesToOpen: Type.Number(),
    /** No plan with these crews can open earlier than this. */
    lowerBound: Type.Number(),
    /** Schedules made. */
    schedules: Type.Number(),
    /** The best plan opens at the bound. */
    proven: Type.Boolean(),
  },
  closed,
);
export type PlanNews = Static<typeof PlanNews>;

/** What a new plan brings over the one in force, both from now on, and what it costs. */
export const PlanOffer = Type.Object(
  {
    /** Minutes earlier; negative is later; 0 where `needed`. */
    gain: Type.Number(),
    /** Minutes after the start at which the new plan opens, kept to from now on. */
    opens: Type.Number(),
    /** The same of the plan in force, with the people there are; null when it is for other tasks. */
    acceptedOpens: Type.Union([Type.Number(), Type.Null()]),
    changedOrders: Type.Integer({ minimum: 0 }),
    /** Ids of the crews that hear of a change. */
    crews: Type.Array(Type.String()),
    /** The plan in force cannot be kept to any more. */
    needed: Type.Boolean(),
  },
  closed,
);
export type PlanOffer = Static<typeof PlanOffer>;

/** A plan that the server worked out by itself and found worth a look; null when there is none, or no longer. */
export const OfferFrame = Type.Union([
  Type.Object(
    {
      proposal: CommandId,
      /** Record number that it was made on. */
      basis: Type.Integer({ minimum: 0 }),
      /** "opens 14 min earlier; changes 5 orders for 2 crews". */
      gain: Type.String(),
    },
    closed,
  ),
  Type.Null(),
]);
export type OfferFrame = Static<typeof OfferFrame>;
