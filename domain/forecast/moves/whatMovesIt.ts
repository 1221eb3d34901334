import { DrawTables } from '../drawTables.ts';
import { type Lever, type LeverSizes, usualSizes } from './lever.ts';
import { leversOf } from './levers.ts';
import { forecastSeen, openingBy, paceSeen, type Seen } from './seen.ts';

/** What one lever does to the opening. Minutes: above 0 it opens earlier, below 0 later. */
export type Moved = Pick<Lever, 'kind' | 'of' | 'words'> & {
  readonly gain50: number;
  readonly gain80: number;
};

export type WhatMovesIt = {
  /** By what it gains or costs at P80, the most first. */
  readonly ranked: readonly Moved[];
  /** What one might do and what would gain nothing worth a word. */
  readonly cannotHelp: readonly Moved[];
  /** Mishaps that would cost nothing worth a word: the chain does not go through them. */
  readonly cannotHurt: readonly Moved[];
};

/** Less than this is nothing. Minutes. */
const least = 0.5;

export type WhatMovesItOptions = {
  readonly runs: number;
  readonly seed: number;
  readonly sizes?: LeverSizes;
  readonly onProgress?: (done: number, of: number) => void;
  readonly shouldStop?: () => boolean;
};

/**
 * What would move the opening from now, each tried alone in a simulation on the same luck as the one without it. Order,
 * hand-overs and what was learned stay as they are: a new plan may gain more. When `shouldStop` says so the answer is
 * of those tried until then.
 */
export function whatMovesIt(
  seen: Seen,
  { runs, seed, sizes = usualSizes, onProgress, shouldStop }: WhatMovesItOptions,
): WhatMovesIt {
  const pairing = { runs, seed, tables: new DrawTables() };
  // What was learned was learned with the people there were: it must not change with the levers.
  const base = { ...seen, doubts: { ...seen.doubts, pace: paceSeen(seen) } };
  const before = forecastSeen(base, pairing);
  const levers = leversOf(base, before, sizes);
  const moved: (Moved & { help: boolean })[] = [];
  for (const { kind, of, words, help, change } of levers) {
    if (shouldStop?.()) break;
    const after = forecastSeen(change(base), pairing);
    moved.push({
      kind,
      ...(of !== undefined && { of }),
      words,
      help,
      gain50: openingBy(before, 0.5) - openingBy(after, 0.5),
      gain80: openingBy(before, 0.8) - openingBy(after, 0.8),
    });
    onProgress?.(moved.length, levers.length);
  }
  const counts = ({ gain50, gain80 }: Moved) => Math.max(Math.abs(gain50), Math.abs(gain80));
  const plain = ({ help: _, ...rest }: Moved & { help: boolean }): Moved => rest;
  return {
    ranked: moved
      .filter((each) => counts(each) >= least)
      .sort((one, other) => Math.abs(other.gain80) - Math.abs(one.gain80))
      .map(plain),
    cannotHelp: moved.filter((each) => each.help && counts(each) < least).map(plain),
    cannotHurt: moved.filter((each) => !each.help && counts(each) < least).map(plain),
  };
}

/** "Two more people in Left girder: opens 6 min earlier at even chance, 8 min at four in five." */
export function movedSentence({ words, gain50, gain80 }: Moved): string {
  const [even, four] = [Math.round(gain50), Math.round(gain80)];
  if (even === 0 && four === 0) return `${words}: no change.`;
  const said = (gain: number) =>
    gain === 0 ? 'no change' : `${Math.abs(gain)} min ${gain > 0 ? 'earlier' : 'later'}`;
  return `${words}: ${said(even)} at even chance, ${said(four)} at four in five.`;
}
