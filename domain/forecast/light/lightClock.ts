import { type Static, Type } from 'typebox';

/** From when to when it is dark. Minutes after the start of the build; the first may begin before it. */
export const DarkSpell = Type.Object(
  { from: Type.Number(), to: Type.Number() },
  { additionalProperties: false },
);
export type DarkSpell = Static<typeof DarkSpell>;

/**
 * A clock that goes slower in the dark. What it counts is *light minutes*: the minutes that the same work takes by
 * day. Until `at[0]` both clocks agree. From `at[i]` the clock shows `shows[i]` and goes at `rate[i]`.
 */
export type LightClock = {
  readonly at: Float64Array;
  readonly shows: Float64Array;
  readonly rate: Float64Array;
};

/** `spells` in order and apart; in each, work takes `factor` times (at least 1) as long. */
export function lightClock(spells: readonly DarkSpell[], factor: number): LightClock {
  const count = factor > 1 ? 2 * spells.length : 0;
  const at = new Float64Array(count);
  const shows = new Float64Array(count);
  const rate = new Float64Array(count);
  for (let k = 0; k < count; k++) {
    const { from, to } = spells[k >> 1]!;
    at[k] = k % 2 === 0 ? from : to;
    rate[k] = k % 2 === 0 ? 1 / factor : 1;
    shows[k] = k === 0 ? from : shows[k - 1]! + (at[k]! - at[k - 1]!) * rate[k - 1]!;
  }
  return { at, shows, rate };
}

/** Light minutes at `time`. Rises with it, never faster. */
export function lightMinutes({ at, shows, rate }: LightClock, time: number): number {
  let k = at.length - 1;
  while (k >= 0 && time < at[k]!) k--;
  return k < 0 ? time : shows[k]! + (time - at[k]!) * rate[k]!;
}

/**
 * When work of so many light minutes that begins at `begin` is done: exact, slowed from dusk on and quick again from
 * dawn. Never earlier for more minutes or a later begin.
 */
export function finishInLight(clock: LightClock, begin: number, minutes: number): number {
  const { at, shows, rate } = clock;
  // Nearly all work is done before the first dusk.
  if (minutes === 0 || at.length === 0 || begin + minutes <= at[0]!) return begin + minutes;
  const shown = lightMinutes(clock, begin) + minutes;
  let k = at.length - 1;
  while (k >= 0 && shown < shows[k]!) k--;
  // Rounding must not turn no minutes into a finish before the begin.
  return k < 0 ? begin + minutes : Math.max(begin, at[k]! + (shown - shows[k]!) / rate[k]!);
}
