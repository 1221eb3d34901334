import { confidenceWords } from '#domain/brief/confidence.ts';
import { openingAt } from '#domain/brief/opening.ts';
import type { Forecast } from '#domain/forecast/forecast.ts';
import { minutes } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';

/**
 * What a plan on trial gains over the plan in force, both seen from now: at the confidence the leader chose, then at
 * even chance. Whole minutes, as the headlines beside it say them. `start` is the start of the build.
 */
export function gainWords(
  before: Forecast,
  after: Forecast,
  confidence: number,
  start: string,
): string {
  const said = [...new Set([confidence, 0.5])].map((one) => {
    const at = (forecast: Forecast): number => Date.parse(openingAt({ start }, forecast, one));
    const later = Math.round((at(after) - at(before)) / 60_000);
    return words.plan.gain(confidenceWords(one), shiftWords(later));
  });
  return said.join(' ');
}

function shiftWords(later: number): string {
  if (later === 0) return words.plan.gainNone;
  return later < 0 ? words.plan.moveEarlier(minutes(-later)) : words.plan.moveLater(minutes(later));
}
