import type { Forecast } from '../forecast/forecast.ts';
import { sameMoment } from '../forecast/summary.ts';
import type { BuildState } from '../progress/state.ts';
import { openedOf } from '../progress/views/opened.ts';
import { clockTime } from './clockTime.ts';
import { confidenceWords, ofTwentyWords } from './confidence.ts';

/** What a page says about the opening: the headline, and sentences that go with it, in order. */
export type OpeningWords = {
  /** "Nine in ten by 16:36": no full stop, it is set large. */
  readonly headline: string;
  /** "Even chance by 16:10."; null when the build is open or nothing can be forecast. */
  readonly even: string | null;
  /** "Asked for 17:00: 19 of 20 make it."; null when nobody asked for a time. */
  readonly asked: string | null;
};

/**
 * The time to open in words, the leader's confidence first, then the even chance: a middle never
 * stands alone, because it is late half the time. Clock times are of the site, rounded up to the
 * minute so that no promise is early, with the days from `now` (ISO 8601 UTC) on.
 */
export function openingHeadline(
  forecast: Forecast | null,
  build: BuildState,
  now: string,
): OpeningWords {
  const opened = openedOf(build).since;
  if (opened !== null) {
    return {
      headline: `Open since ${clockTime(opened, build.zone, now)}`,
      even: null,
      asked: askedAndMade(build, opened, now),
    };
  }
  if (forecast === null) {
    const headline = build.plan === null ? 'No plan yet' : 'No forecast yet';
    return { headline, even: null, asked: askedAlone(build, now) };
  }
  const by = (confidence: number) => {
    const time = clockTime(openingAt(build, forecast, confidence), build.zone, now);
    return `${confidenceWords(confidence)} by ${time}`;
  };
  // With an even chance as the headline, the surer time goes with it instead.
  const other = build.confidence > 0.5 ? 0.5 : 0.9;
  return {
    headline: by(build.confidence),
    even: `${by(other)}.`,
    asked: askedAgainst(build, forecast, now),
  };
}

/** The instant (ISO 8601 UTC, whole minutes, rounded up) by which the build opens with this confidence, 0.01 to 0.99. */
export function openingAt(
  { start }: Pick<BuildState, 'start'>,
  { percentiles }: Forecast,
  confidence: number,
): string {
  const percent = Math.min(99, Math.max(1, Math.ceil(confidence * 100 - 1e-9)));
  const exact = Date.parse(start) + percentiles[percent - 1]! * 60_000;
  // A millisecond less, so that binary digits of decimal minutes do not make a whole minute more.
  return new Date(Math.ceil((exact - 1) / 60_000) * 60_000).toISOString();
}

function askedAlone({ askedFor, zone }: BuildState, now: string): string | null {
  return askedFor === null ? null : `Asked for ${clockTime(askedFor, zone, now)}.`;
}

function askedAgainst(build: BuildState, { openings }: Forecast, now: string): string | null {
  const { askedFor, start, zone } = build;
  if (askedFor === null) return null;
  const minutes = (Date.parse(askedFor) - Date.parse(start)) / 60_000;
  const made = openings.filter((opening) => opening <= minutes + sameMoment).length;
  const words = ofTwentyWords(made, openings.length);
  return `Asked for ${clockTime(askedFor, zone, now)}: ${words}.`;
}

function askedAndMade({ askedFor, zone }: BuildState, opened: string, now: string): string | null {
  if (askedFor === null) return null;
  const late = Math.round((Date.parse(opened) - Date.parse(askedFor)) / 60_000);
  const how = late > 0 ? `${late} min late` : late < 0 ? `${-late} min early` : 'on time';
  return `Asked for ${clockTime(askedFor, zone, now)}: ${how}.`;
}
