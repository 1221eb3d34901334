import { openingAt } from '#domain/brief/opening.ts';
import type { BuildState } from '#domain/progress/state.ts';
import type { ForecastFrame } from '#shared/wire.ts';
import { clock, minutes } from '../../words/units.ts';
import { words } from '../../words/words.ts';

/** Smaller changes than this are not worth a commander's attention. Minutes. */
const least = 2;
const hour = 3_600_000;

/**
 * How the time to open moved since about an hour ago, or since the first forecast if that is younger; null when there
 * is nothing to compare. `told` are the forecasts as they were sent up, oldest first.
 */
export function changedWords(
  state: BuildState,
  told: readonly ForecastFrame[],
  present: ForecastFrame | null,
  now: number,
): string | null {
  if (!present?.forecast) return null;
  const known = told.filter((one) => one.forecast !== null && Date.parse(one.at) < now - 300_000);
  const then = known.findLast((one) => Date.parse(one.at) <= now - hour) ?? known[0];
  if (!then?.forecast) return null;
  const at = (frame: NonNullable<ForecastFrame['forecast']>): number =>
    Date.parse(openingAt(state, frame, state.confidence)) / 60_000;
  const by = at(present.forecast) - at(then.forecast);
  const said = words.commander.changed;
  const when = clock(then.at, state.zone, now);
  if (Math.abs(by) < least) return said.same(when);
  return by > 0 ? said.later(minutes(by), when) : said.earlier(minutes(-by), when);
}
