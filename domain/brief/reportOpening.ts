import type { Forecast } from '../forecast/forecast.ts';
import type { BuildState } from '../progress/state.ts';
import { openedOf } from '../progress/views/opened.ts';
import { clockTime } from './clockTime.ts';
import { dateTimeGroup } from './dateTimeGroup.ts';
import { openingAt, openingHeadline } from './opening.ts';

/** The line on the time to open: headline with its date-time group, even chance, range, time asked for. */
export function openingText(state: BuildState, forecast: Forecast | null, now: string): string {
  const { headline, even, asked } = openingHeadline(forecast, state, now);
  const opened = openedOf(state).since;
  const by = opened ?? (forecast ? openingAt(state, forecast, state.confidence) : null);
  const group = by === null ? '' : ` (${dateTimeGroup(by, state.zone, 'full')})`;
  const range = opened === null && forecast ? rangeSentence(state, forecast, now) : null;
  return [`${headline}${group}.`, even, range, asked].filter((text) => text !== null).join(' ');
}

function rangeSentence(state: BuildState, forecast: Forecast, now: string): string {
  const at = (confidence: number) =>
    clockTime(openingAt(state, forecast, confidence), state.zone, now);
  return `Eight in ten lie between ${at(0.1)} and ${at(0.9)}.`;
}
