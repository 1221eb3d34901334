import { scaleLinear } from 'd3-scale';
import { spreadApart } from './spreadApart.ts';

/** What was forecast at one moment. All in minutes after the start of the build. */
export type Look = {
  readonly at: number;
  /** Ends of the band that holds four in five openings. */
  readonly early: number;
  readonly late: number;
  readonly even: number;
  /** The opening at the confidence of the headline. */
  readonly sure: number;
};

/** Something that moved the opening, at `at` minutes after the start. */
type Turn = { readonly at: number };

export type CourseLayout = {
  readonly height: number;
  /** Across: openings, in minutes after the start. Down: when they were forecast. */
  readonly x: (opening: number) => number;
  readonly y: (at: number) => number;
  readonly openings: readonly [number, number];
  readonly clock: readonly [number, number];
  /** Paths. A forecast holds until the next is made. */
  readonly band: string;
  readonly sure: string;
  readonly even: string;
  /** Where the post "asked" stands; null when nobody asked or it lies too far off to be drawn to scale. */
  readonly post: number | null;
  readonly askedOff: 'before' | 'after' | null;
  /** Where each turn's line and its mark stand, downwards; marks are apart, lines are where they belong. */
  readonly turns: readonly { readonly line: number; readonly mark: number }[];
};

export type CourseSize = {
  /** Pixels of the plot, without its gutters. */
  readonly width: number;
  /** Pixels that a mark needs downwards, to be touched. */
  readonly mark: number;
};

/** Pixels downwards for an hour, and the least and most of the whole. */
const hour = 110;
const [lowest, highest] = [220, 560];

/**
 * How the forecast itself moved: openings across as in the opening strip, the clock down as in the crew columns.
 * `looks` in order of time, at least one; the last holds until `now`.
 */
export function layCourse(
  looks: readonly Look[],
  turns: readonly Turn[],
  asked: number | null,
  now: number,
  { width, mark }: CourseSize,
): CourseLayout {
  const first = Math.min(...looks.map(({ early, sure }) => Math.min(early, sure)));
  const last = Math.max(...looks.map(({ late, sure }) => Math.max(late, sure)));
  const spread = Math.max(20, last - first);
  const near = asked !== null && asked > first - 1.5 * spread && asked < last + 1.5 * spread;
  const low = near ? Math.min(first, asked) : first;
  const high = near ? Math.max(last, asked) : last;
  const margin = 0.08 * Math.max(20, high - low);
  const openings = [low - margin, high + margin] as const;
  const begin = Math.min(looks[0]!.at, now);
  const end = Math.max(now, looks.at(-1)!.at, begin + 1);
  const room = Math.max(lowest, Math.min(highest, ((end - begin) / 60) * hour));
  const height = Math.max(room, turns.length * mark);
  const x = scaleLinear().domain(openings).range([0, width]);
  const y = scaleLinear().domain([begin, end]).range([0, height]);
  const lines = turns.map(({ at }) => y(Math.min(end, Math.max(begin, at))));
  const marks = spreadApart(lines, mark, mark / 2, height - mark / 2);
  const steps = (of: (look: Look) => number): [number, number][] =>
    looks.flatMap((look, index): [number, number][] => [
      [x(of(look)), y(look.at)],
      [x(of(look)), y(looks[index + 1]?.at ?? end)],
    ]);
  return {
    height,
    x: (opening) => x(opening),
    y: (at) => y(at),
    openings,
    clock: [begin, end],
    band: `${path([...steps(({ early }) => early), ...steps(({ late }) => late).toReversed()])}Z`,
    sure: path(steps(({ sure }) => sure)),
    even: path(steps(({ even }) => even)),
    post: near ? x(asked) : null,
    askedOff: asked === null || near ? null : asked < first ? 'before' : 'after',
    turns: lines.map((line, index) => ({ line, mark: marks[index]! })),
  };
}

/** What the forecast said at a moment: the last look at or before it, else the first. */
export function lookAt(looks: readonly Look[], at: number): Look | undefined {
  return looks.findLast((look) => look.at <= at) ?? looks[0];
}

function path(points: readonly (readonly [number, number])[]): string {
  return points
    .map(([across, down], index) => `${index === 0 ? 'M' : 'L'}${tenths(across)} ${tenths(down)}`)
    .join('');
}

function tenths(value: number): number {
  return Math.round(value * 10) / 10;
}
