import { type Static, Type } from 'typebox';

/** How hard the work is. Building by hand is hard work; guiding a move or an inspection is easy. */
export const Effort = Type.Union([
  Type.Literal('easy'),
  Type.Literal('moderate'),
  Type.Literal('hard'),
]);
export type Effort = Static<typeof Effort>;

/** What people wear over their work clothes. `sealed` is full protective dress against agents. */
export const Dress = Type.Union([
  Type.Literal('plain'),
  Type.Literal('armour'),
  Type.Literal('sealed'),
]);
export type Dress = Static<typeof Dress>;

/** Minutes of each hour at work and at rest. */
export type WorkRest = { readonly work: number; readonly rest: number };

/**
 * Work and rest in each hour for acclimatised people, by wet-bulb globe temperature in degrees Fahrenheit from which
 * the row holds, good for at least four hours. Source: the card after TB MED 507 at irwin.amedd.army.mil/pages/wbgt.htm.
 */
const rows: readonly { readonly from: number; readonly work: Readonly<Record<Effort, number>> }[] =
  [
    { from: 90, work: { easy: 50, moderate: 20, hard: 10 } },
    { from: 88, work: { easy: 60, moderate: 30, hard: 20 } },
    { from: 85, work: { easy: 60, moderate: 40, hard: 30 } },
    { from: 82, work: { easy: 60, moderate: 50, hard: 30 } },
    { from: 78, work: { easy: 60, moderate: 60, hard: 40 } },
  ];

/** What the dress adds to the wet-bulb globe temperature, degrees Fahrenheit; same card: armour in a humid climate. */
function dressAdds(dress: Dress, effort: Effort): number {
  if (dress === 'armour') return 5;
  if (dress === 'sealed') return effort === 'easy' ? 10 : 20;
  return 0;
}

/** Work and rest at `wbgt` degrees Fahrenheit; 60 and 0 where there is no limit. */
export function workRest(wbgt: number, effort: Effort, dress: Dress = 'plain'): WorkRest {
  const felt = wbgt + dressAdds(dress, effort);
  const work = rows.find(({ from }) => felt >= from)?.work[effort] ?? 60;
  return { work, rest: 60 - work };
}

/** Wet-bulb globe temperature outdoors from wet-bulb, globe and air temperature, in their unit; same card. */
export function wbgtOutdoors(wet: number, globe: number, air: number): number {
  return 0.7 * wet + 0.2 * globe + 0.1 * air;
}

/** Degrees Celsius in Fahrenheit, to a hundredth: where a row of the card begins, binary digits must not decide. */
export function fahrenheit(celsius: number): number {
  return Math.round((celsius * 1.8 + 32) * 100) / 100;
}

/** How much longer work takes with the rests: 60 over the minutes at work in each hour. */
export function heatFactor({ work }: WorkRest): number {
  return 60 / work;
}
