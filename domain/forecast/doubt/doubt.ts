import { type Static, Type } from 'typebox';
import { DoubtEvent } from './events.ts';
import { Dress, Effort } from './heat.ts';

const Sigma = Type.Number({ minimum: 0, maximum: 1 });
const Source = Type.String({ minLength: 1, maxLength: 200 });
const Factor = Type.Number({ minimum: 0.2, maximum: 10 });

/** One factor on the minutes of all work, stated by the leader. */
export const Condition = Type.Object(
  { on: Type.Boolean(), factor: Factor, source: Source },
  { additionalProperties: false },
);
export type Condition = Static<typeof Condition>;

/** A factor drawn once per run: log-normal with median 1; `sigma` is the deviation of its logarithm. */
const SharedFactor = Type.Object(
  { on: Type.Boolean(), sigma: Sigma, source: Source },
  { additionalProperties: false },
);

/** In the dark everything takes `factor` times as long, with work lights `lit` times. */
const LightDoubt = Type.Object(
  {
    on: Type.Boolean(),
    factor: Type.Number({ minimum: 1, maximum: 10 }),
    lights: Type.Boolean(),
    lit: Type.Number({ minimum: 1, maximum: 10 }),
    source: Source,
  },
  { additionalProperties: false },
);

/** Rests by wet-bulb globe temperature, degrees Celsius. */
const Heat = Type.Object(
  {
    on: Type.Boolean(),
    wbgt: Type.Number({ minimum: -30, maximum: 60 }),
    effort: Effort,
    dress: Dress,
    source: Source,
  },
  { additionalProperties: false },
);

/** Crews get faster bay after bay: unit learning curve, `rate` of the minutes at each doubling. */
const Learning = Type.Object(
  { on: Type.Boolean(), rate: Type.Number({ minimum: 0.5, maximum: 1 }), source: Source },
  { additionalProperties: false },
);

/** Every source of doubt of a build, each with its figure, where that comes from, and a switch. */
export const Doubt = Type.Object(
  {
    format: Type.Literal('spanwright-doubt'),
    version: Type.Literal(1),
    /** Each task's own quick/likely/slow; off: expected minutes for sure. */
    own: Type.Boolean(),
    day: SharedFactor,
    crews: SharedFactor,
    events: Type.Array(DoubtEvent, { maxItems: 50 }),
    light: LightDoubt,
    weather: Condition,
    training: Condition,
    site: Condition,
    /** What protective dress costs by itself; the rests it asks for come with heat. */
    dress: Condition,
    heat: Heat,
    learning: Learning,
  },
  { additionalProperties: false },
);
export type Doubt = Static<typeof Doubt>;
