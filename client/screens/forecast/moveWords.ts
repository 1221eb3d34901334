import type { ForecastMove } from '#shared/wireForecast.ts';
import { minutes } from '../../words/units.ts';
import { words } from '../../words/words.ts';

/** How far the opening moved: "14 min later". */
export function shiftSaid(later: number): string {
  const said = words.forecast.course;
  const whole = Math.round(later);
  if (whole === 0) return said.same;
  return whole > 0 ? said.later(minutes(whole)) : said.earlier(minutes(-whole));
}

/** A move in one breath: how far, and the causes behind it. A cause that is all of it stands for the whole. */
export function moveSaid({ minutes: later, causes }: ForecastMove): string {
  const [only, ...others] = causes;
  const sentences = causes.map(({ sentence }) => sentence);
  if (only && others.length === 0 && Math.abs(only.minutes - later) < 1) return only.sentence;
  return [`${shiftSaid(later)}.`, ...sentences].join(' ');
}

/**
 * The moves as they are read: those that follow one another and say no more than that time went on are one, from where
 * the first began to where the last ended.
 */
export function foldQuiet(moves: readonly ForecastMove[]): ForecastMove[] {
  const folded: ForecastMove[] = [];
  for (const move of moves) {
    const before = folded.at(-1);
    if (!before || !isQuiet(before) || !isQuiet(move)) {
      folded.push(move);
      continue;
    }
    const minutes = before.minutes + move.minutes;
    const sentence = words.forecast.course.timeWentOn(shiftSaid(minutes));
    folded[folded.length - 1] = {
      ...move,
      since: before.since,
      minutes,
      causes: [{ kind: 'progress', minutes, sentence }],
    };
  }
  return folded;
}

/** Every cause is that the clock ran and nothing was told. */
function isQuiet({ causes }: ForecastMove): boolean {
  return causes.length > 0 && causes.every(({ sentence }) => sentence.endsWith(': time went on.'));
}

/** The moves worth a mark: the largest, in the order of time. More marks than these would not be read. */
export function markedMoves(moves: readonly ForecastMove[], most: number): ForecastMove[] {
  const largest = moves
    .toSorted((one, other) => Math.abs(other.minutes) - Math.abs(one.minutes))
    .slice(0, most);
  return moves.filter((move) => largest.includes(move));
}
