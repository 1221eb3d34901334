import { DrawTables } from '../drawTables.ts';
import { forecastSeen, openingBy, paceSeen, type Seen } from './seen.ts';
import {
  doubtWhy,
  paceWhy,
  planWhy,
  progressWhy,
  storesWhy,
  strengthWhy,
} from './whatMovedWords.ts';

/** One cause that moved the opening. Minutes: above 0 it opens later. */
export type Cause = {
  readonly kind: 'plan' | 'stores' | 'strength' | 'doubt' | 'progress' | 'pace';
  readonly minutes: number;
  /** "12 min later: Truck 5 is now expected 12 min later." */
  readonly sentence: string;
};

/** Minutes: above 0 it opens later. The largest cause first. */
export type WhatMoved = { readonly minutes: number; readonly causes: readonly Cause[] };

export type WhatMovedOptions = {
  readonly runs: number;
  readonly seed: number;
  /** The leader's: the opening that is explained is the one promised at this confidence, 0.01 to 0.99. */
  readonly confidence: number;
  readonly onProgress?: (done: number, of: number) => void;
  readonly shouldStop?: () => boolean;
};

/** Less than this is nothing. Minutes. */
const least = 0.5;

/**
 * What moved the promised opening between two looks at a build, by how much and why. One part of the picture after the
 * other is put in place of the old one, each time on the same luck: plan and order of work, stores, strength, stated
 * doubt, what happened, and last what that teaches of the pace. So the minutes of all causes, small ones left out
 * here included, add up to the whole move. When `shouldStop` says so the answer is of the parts looked at until then.
 */
export function whatMoved(
  before: Seen,
  after: Seen,
  { runs, seed, confidence, onProgress, shouldStop }: WhatMovedOptions,
): WhatMoved {
  const pairing = { runs, seed, tables: new DrawTables() };
  const opening = (seen: Seen) => openingBy(forecastSeen(seen, pairing), confidence);
  const pace = { before: paceSeen(before), after: paceSeen(after) };
  const { pace: _, ...stated } = after.doubts;

  const first: Seen = { ...before, doubts: { ...before.doubts, pace: pace.before } };
  const planned: Seen = {
    ...first,
    plan: after.plan,
    work: { ...after.work, loads: before.work.loads, crews: before.work.crews },
  };
  const stored = { ...planned, work: { ...planned.work, loads: after.work.loads } };
  const manned = { ...stored, work: after.work };
  const doubted: Seen = {
    ...manned,
    doubts: {
      ...stated,
      pace: pace.before,
      ...(before.doubts.ticks && { ticks: before.doubts.ticks }),
    },
  };
  const happened: Seen = {
    ...doubted,
    past: after.past,
    doubts: { ...stated, pace: pace.before },
  };
  const learned: Seen = { ...happened, doubts: { ...stated, pace: pace.after } };

  const steps = [
    { kind: 'plan', seen: planned, why: () => planWhy(before, after) },
    { kind: 'stores', seen: stored, why: () => storesWhy(before, after) },
    { kind: 'strength', seen: manned, why: () => strengthWhy(before, after) },
    { kind: 'doubt', seen: doubted, why: () => doubtWhy(before, after) },
    {
      kind: 'progress',
      seen: happened,
      why: (minutes: number) => progressWhy(before, after, minutes),
    },
    {
      kind: 'pace',
      seen: learned,
      why: (minutes: number) => paceWhy(after.work, pace.before, pace.after, minutes > 0),
    },
  ] as const;
  const start = opening(first);
  let was = start;
  const causes: Cause[] = [];
  for (const [done, { kind, seen, why }] of steps.entries()) {
    if (shouldStop?.()) break;
    const is = opening(seen);
    const minutes = is - was;
    was = is;
    if (Math.abs(minutes) >= least)
      causes.push({ kind, minutes, sentence: said(minutes, why(minutes)) });
    onProgress?.(done + 1, steps.length);
  }
  causes.sort((one, other) => Math.abs(other.minutes) - Math.abs(one.minutes));
  return { minutes: was - start, causes };
}

function said(minutes: number, why: string): string {
  const whole = Math.max(1, Math.round(Math.abs(minutes)));
  const hours = Math.floor(whole / 60);
  const rest = String(whole % 60).padStart(2, '0');
  const time = hours === 0 ? `${whole} min` : `${hours} h ${rest} min`;
  return `${time} ${minutes > 0 ? 'later' : 'earlier'}: ${why}.`;
}
