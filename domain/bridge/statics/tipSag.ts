import type { Run } from './body.ts';
import { gravity } from './centreOfGravity.ts';
import type { Reaction } from './reactions.ts';

/** Bending stiffness of nose and bays, newton square metres. */
export type Stiffness = { readonly nose: number; readonly bay: number };

/**
 * How far the tip of an overhanging bridge hangs below the line through its bearers, in metres: the cantilever's own
 * bending and the turn at the front bearer. By virtual work: the sum of M m / EI over the bridge, where M is the
 * bending moment (hogging positive) and m that of one newton at the tip. M is of second degree on each length of even
 * mass and m of first, so that Simpson's rule over each is exact. With both bearers at one place it is held level there.
 *
 * `tip` is where the tip of the whole nose would be, metres ahead of the front rollers; runs are in order from there.
 */
export function tipSag(
  runs: readonly Run[],
  tip: number,
  bearers: readonly [Reaction, Reaction],
  stiffness: Stiffness,
): number {
  const [front, rear] = bearers;
  const first = runs[0];
  if (!first) {
    return 0;
  }
  const end = tip - first.from;
  let [shear, moment, sag] = [0, 0, 0];
  let left = [front, rear].filter(({ at }) => at <= end);
  const unitAt = (x: number) =>
    x >= front.at ? end - x : ((end - front.at) * (x - rear.at)) / (front.at - rear.at);
  for (const run of runs) {
    const length = run.to - run.from;
    if (length === 0) {
      shear += run.kilograms * gravity;
      continue;
    }
    const weight = (run.kilograms * gravity) / length;
    const back = tip - run.to;
    let x = tip - run.from;
    while (x > back) {
      const bearer = left[0];
      if (bearer && bearer.at >= x) {
        shear -= bearer.newtons;
        left = left.slice(1);
        continue;
      }
      const next = Math.max(back, bearer?.at ?? back);
      const step = x - next;
      const half = moment + (shear * step) / 2 + (weight * step ** 2) / 8;
      const whole = moment + shear * step + (weight * step ** 2) / 2;
      if (next >= rear.at) {
        const work = moment * unitAt(x) + 4 * half * unitAt((x + next) / 2) + whole * unitAt(next);
        sag += (work * step) / 6 / (run.part === 'nose' ? stiffness.nose : stiffness.bay);
      }
      moment = whole;
      shear += weight * step;
      x = next;
    }
  }
  return sag;
}
