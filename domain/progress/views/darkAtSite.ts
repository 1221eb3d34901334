import { darkFactor } from '../../forecast/doubt/conditions.ts';
import { darkSpells } from '../../forecast/light/darkSpells.ts';
import type { DarkSpell } from '../../forecast/light/lightClock.ts';
import type { Work } from '../../tasks/work.ts';
import type { BuildState } from '../state.ts';
import { doubtInForce } from './doubtInForce.ts';

/** Nights looked at beyond the end that the plan names: a build that goes badly still meets them. Minutes. */
const beyond = 2 * 24 * 60;

/** When it is dark at the site, until well after `end`; none where nobody gave the place. */
export function darkAtSite({ ground, start }: BuildState, end: number): readonly DarkSpell[] {
  return ground?.place ? darkSpells(ground.place, start, end + beyond) : [];
}

/**
 * The nights that plans are made for, and how many times as long work then takes by the doubt in force; what the order
 * of work says where nobody gave the place.
 */
export function darkToPlanFor(state: BuildState): Work['dark'] {
  const spells = darkAtSite(state, state.plan?.minutesToOpen ?? 0);
  if (spells.length === 0) return state.work.dark;
  const doubt = doubtInForce(state);
  return { spells: [...spells], factor: doubt.light.on ? darkFactor(doubt) : 1 };
}
