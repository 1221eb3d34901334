/** So much of a second is rounding of minutes, not time: 66.00000000000001 s is 66 s. */
const dust = 1e-6;

/** The first whole second that is not before `minutes`. */
export function secondsNotBefore(minutes: number): number {
  return Math.ceil(minutes * 60 - dust);
}

/** The last whole second that is not after `minutes`. */
export function secondsNotAfter(minutes: number): number {
  return Math.floor(minutes * 60 + dust);
}
