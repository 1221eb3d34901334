import { type LightClock, lightMinutes } from '../light/lightClock.ts';

/** Light minutes at work between two times, less the spells in which it stood. Never below 0. */
export function workedMinutes(
  clock: LightClock,
  from: number,
  to: number,
  stops: readonly { readonly from: number; readonly to: number }[],
): number {
  const between = (one: number, other: number) =>
    Math.max(0, lightMinutes(clock, other) - lightMinutes(clock, one));
  return stops.reduce(
    (left, stop) => Math.max(0, left - between(Math.max(from, stop.from), Math.min(to, stop.to))),
    between(from, to),
  );
}
