import { type Static, Type } from 'typebox';

export const findingKinds = [
  'faulty',
  'no-crew-can',
  'zone-too-small',
  'hours-too-short',
  'light-too-short',
  'fixed-blocked',
  'stands-alone',
  'nothing-before',
  'nothing-after',
  'finish-dangles',
  'delay-test',
  'hold-guards-nothing',
  'hold-looks-at-nothing',
  'negative-wait',
  'many-waits',
  'many-start-links',
  'very-long',
  'large-float',
  'nobody-named',
  'asked-too-early',
  'behind',
] as const;

/** One thing in an order of work that makes its plan hard to trust. */
export const Finding = Type.Object(
  {
    kind: Type.Unsafe<(typeof findingKinds)[number]>(
      Type.Union(findingKinds.map((kind) => Type.Literal(kind))),
    ),
    /** `stops`: cannot be planned; `mend`: the plan is not to be trusted before; `look`: may be meant so. */
    weight: Type.Union([Type.Literal('stops'), Type.Literal('mend'), Type.Literal('look')]),
    /** Ids of the tasks concerned. */
    tasks: Type.Array(Type.String()),
    /** What was found and what to do. */
    sentence: Type.String(),
    /** Where the check and its mark come from; says so when the mark is restated in minutes. */
    source: Type.String(),
  },
  { additionalProperties: false },
);
export type Finding = Static<typeof Finding>;
