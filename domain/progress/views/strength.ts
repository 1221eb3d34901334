import type { BuildState } from '../state.ts';

/** People of all crews, attached ones too. `onSite` counts the fit and those out of work since the last count. */
export type Strength = {
  readonly onSite: number;
  readonly planned: number;
  readonly fit: number;
  readonly hurt: number;
};

/** How many people there are, were to be, can work and were hurt. */
export function strengthOf({ crews }: BuildState): Strength {
  const sum = { onSite: 0, planned: 0, fit: 0, hurt: 0 };
  for (const { fit, hurt, outOfWork, planned } of Object.values(crews)) {
    sum.onSite += fit + outOfWork;
    sum.planned += planned.people;
    sum.fit += fit;
    sum.hurt += hurt;
  }
  return sum;
}
