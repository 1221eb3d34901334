import { type Static, Type } from 'typebox';
import { LapseCause, Measure } from '../tasks/hold.ts';
import { Minutes } from '../tasks/task.ts';

/**
 * The order of work of a kit, written once for every length of bridge.
 *
 * A template task repeats along the bridge; each repetition becomes one task. What a repetition is about follows from
 * the design of the bridge, never from a fixed number of bays:
 *
 * - its **bays** (1 leads): the bay itself; the bays of a lot; the bays built new for a stage; the bays a load carries;
 * - its **sections** of the nose (1 is the tip): the section itself; the sections taken off after a stage;
 * - its **stage** of the launch: the stage itself; the first stage that needs the bay built, or decked; the stage after
 *   which the section comes off;
 * - its **side**, its **bank**, its **load**.
 *
 * Texts (`makes`, `name`, ids of crews and zones) hold placeholders in braces: `{bay}`, `{bays}`, `{lot}`, `{section}`,
 * `{stage}`, `{metres}`, `{landing}` (", tip lands" or nothing), `{side}`, `{bank}`, `{load}` (its number).
 */

/** Ids inside a kit: small letters, digits and `-`. */
export const KitId = Type.String({ pattern: '^[a-z0-9][a-z0-9-]*$', maxLength: 40 });

/** An id or a text with placeholders that make an id. */
const IdPattern = Type.String({ pattern: '^[a-z0-9{}-]+$', minLength: 1, maxLength: 60 });

/** Along what a template task repeats. */
export const Repeat = Type.Object(
  {
    /**
     * `bay` and `section` one by one; `lot` by so many bays; `stage` by stage of the launch; `load` by truck load;
     * `bank` near and far; `side` left and right.
     */
    by: Type.Union([
      Type.Literal('bay'),
      Type.Literal('lot'),
      Type.Literal('section'),
      Type.Literal('stage'),
      Type.Literal('load'),
      Type.Literal('bank'),
      Type.Literal('side'),
    ]),
    /** Each once more for left and right. Not with `side` or `load`. */
    sides: Type.Optional(Type.Boolean()),
    /** With `bay`: only those decked before the tip lands, or only the others. */
    bays: Type.Optional(Type.Union([Type.Literal('decked-early'), Type.Literal('decked-late')])),
    /** With `stage`: only those before the one that lands the tip, that one, or those after it. */
    stages: Type.Optional(
      Type.Union([
        Type.Literal('before-landing'),
        Type.Literal('landing'),
        Type.Literal('after-landing'),
      ]),
    ),
    /** With `lot`: bays to a lot. */
    size: Type.Optional(Type.Integer({ minimum: 1, maximum: 100 })),
    /** With `bay` or `lot`: from the rear towards bay 1. Otherwise from the front. */
    rearFirst: Type.Optional(Type.Boolean()),
  },
  { additionalProperties: false },
);
export type Repeat = Static<typeof Repeat>;

/**
 * `same`: those of this repetition. `2 ahead`: the one so many towards the front (bay 1) from its first;
 * `2 behind`: so many towards the rear from its last; `or end` takes the end one where there are not so many.
 */
const Along = Type.String({ pattern: '^(same|all|first|last|[1-9] (ahead|behind)( or end)?)$' });

/**
 * Which repetitions of another template task are meant. Where both repeat along the same thing (bay, section, stage,
 * side, bank, load) and nothing is said, those with the same; along anything else, all.
 */
export const Reference = Type.Object(
  {
    task: KitId,
    bays: Type.Optional(Along),
    sections: Type.Optional(Along),
    stage: Type.Optional(
      Type.Union([
        Type.Literal('same'),
        Type.Literal('previous'),
        Type.Literal('next'),
        Type.Literal('first'),
        Type.Literal('landing'),
        Type.Literal('last'),
        Type.Literal('all'),
      ]),
    ),
    side: Type.Optional(
      Type.Union([
        Type.Literal('same'),
        Type.Literal('other'),
        Type.Literal('left'),
        Type.Literal('right'),
        Type.Literal('all'),
      ]),
    ),
    bank: Type.Optional(
      Type.Union([
        Type.Literal('same'),
        Type.Literal('other'),
        Type.Literal('near'),
        Type.Literal('far'),
        Type.Literal('all'),
      ]),
    ),
    /** `used`: the loads that carry what this task uses. A load template's id: those made from it. */
    load: Type.Optional(KitId),
  },
  { additionalProperties: false },
);
export type Reference = Static<typeof Reference>;

/** What a template task comes after: `wait` minutes (may be negative) after the other finishes or starts. */
const After = Type.Object(
  {
    ...Reference.properties,
    counts: Type.Optional(Type.Union([Type.Literal('finish'), Type.Literal('start')])),
    wait: Type.Optional(Type.Number({ minimum: -600, maximum: 6000 })),
  },
  { additionalProperties: false },
);

const People = Type.Object(
  {
    least: Type.Integer({ minimum: 1, maximum: 500 }),
    usual: Type.Integer({ minimum: 1, maximum: 500 }),
    most: Type.Integer({ minimum: 1, maximum: 500 }),
  },
  { additionalProperties: false },
);

/**
 * A limit as a number, or taken from the design: bays built or decked by this stage, the kit's margin against tipping,
 * least bearing, most wind for a move. A count whose least comes out as none is left out, and so is a margin once the
 * tip has landed.
 */
const Limit = Type.Union([
  Type.Number(),
  Type.Literal('bays'),
  Type.Literal('decked'),
  Type.Literal('margin'),
  Type.Literal('bearing-near'),
  Type.Literal('bearing-far'),
  Type.Literal('wind'),
]);
export type Limit = Static<typeof Limit>;

/** A number of the design that a measure is compared with: least margin of the stage's move, bearing on a bank, most load on one line of rollers. */
const Reckoned = Type.Union([
  Type.Literal('margin'),
  Type.Literal('bearing-near'),
  Type.Literal('bearing-far'),
  Type.Literal('rollers'),
]);
export type Reckoned = Static<typeof Reckoned>;

const HoldTemplate = Type.Object(
  {
    measures: Type.Array(
      Type.Object(
        {
          ...Measure.properties,
          least: Type.Optional(Limit),
          most: Type.Optional(Limit),
          /** The design's own number, shown beside the field: margin of the stage's move, bearing, load on a roller. */
          reckoned: Type.Optional(Reckoned),
        },
        { additionalProperties: false },
      ),
      { minItems: 1 },
    ),
    lapsesOn: Type.Array(LapseCause),
    redo: Type.Array(Reference),
  },
  { additionalProperties: false },
);
export type HoldTemplate = Static<typeof HoldTemplate>;

/** One line of a kit's order of work. */
export const TaskTemplate = Type.Object(
  {
    id: KitId,
    /** Id of each task made, with placeholders: `bay-{bay}-{side}`. */
    makes: IdPattern,
    name: Type.String({ minLength: 1, maxLength: 80 }),
    phase: Type.String({ minLength: 1, maxLength: 40 }),
    /** Absent: once. */
    repeat: Type.Optional(Repeat),
    /** Only where it is wanted: on a bank with soft ground, or for a move with weights on the tail. Absent: always. */
    only: Type.Optional(Type.Union([Type.Literal('soft-bank'), Type.Literal('counterweight')])),
    needs: Type.Array(
      Type.Object(
        {
          anyOf: Type.Array(IdPattern, { minItems: 1 }),
          people: People,
          skill: Type.Optional(KitId),
        },
        { additionalProperties: false },
      ),
      { minItems: 1 },
    ),
    minutes: Minutes,
    zones: Type.Array(IdPattern, { minItems: 1 }),
    keepOff: Type.Optional(Type.Boolean()),
    hold: Type.Optional(HoldTemplate),
    opens: Type.Optional(Type.Boolean()),
    cautions: Type.Array(Type.String({ minLength: 1, maxLength: 70 }), { maxItems: 4 }),
    tools: Type.Array(Type.String({ minLength: 1, maxLength: 60 })),
    /** Groups of parts it uses; the loads that carry them (for its bays) must have come. */
    uses: Type.Optional(Type.Array(KitId)),
    after: Type.Array(After),
    /** What must come after it: the same link, written at the other end. */
    before: Type.Optional(Type.Array(After)),
    /** What the drawing shows once it is done; the bays, side, stage and bank are the repetition's. */
    effect: Type.Optional(
      Type.Union([
        Type.Literal('nose'),
        Type.Literal('bay'),
        Type.Literal('brace'),
        Type.Literal('move'),
        Type.Literal('deck'),
        Type.Literal('kerb'),
        Type.Literal('nose-off'),
        Type.Literal('seated'),
        Type.Literal('ramp'),
        Type.Literal('approach'),
      ]),
    ),
    /** Where it is done, for the drawing; the bays, side and bank are the repetition's unless `bank` says so. */
    place: Type.String({ minLength: 1, maxLength: 40 }),
    bank: Type.Optional(Type.Union([Type.Literal('near'), Type.Literal('far')])),
  },
  { additionalProperties: false },
);
export type TaskTemplate = Static<typeof TaskTemplate>;
export type After = Static<typeof After>;
