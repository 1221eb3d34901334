import { type Static, Type } from 'typebox';
import { Review } from '#domain/forecast/after/review.ts';

const closed = { additionalProperties: false } as const;

/** GET /api/builds/:build/review: planned against actual, and minutes proposed for an own copy of the kit. */
export const ReviewReply = Type.Object(
  {
    /** Proposals are made once the build is open. */
    open: Type.Boolean(),
    /** Name of the kit; null where the build came from tables. */
    kit: Type.Union([Type.String(), Type.Null()]),
    /** Earlier builds of the same kit that the proposals rest on too. */
    earlier: Type.Integer(),
    review: Review,
  },
  closed,
);
export type ReviewReply = Static<typeof ReviewReply>;

/** POST /api/builds/:build/review/kit: an own copy of the kit under a name of its own with the proposals accepted. Answers KitListed. */
export const OwnKitRequest = Type.Object(
  {
    name: Type.String({ pattern: '^[a-z0-9][a-z0-9-]{0,39}$' }),
    /** Ids of the template tasks whose proposals are accepted. */
    tasks: Type.ReadonlyType(Type.Array(Type.String(), { minItems: 1, maxItems: 500 })),
  },
  closed,
);
export type OwnKitRequest = Static<typeof OwnKitRequest>;
