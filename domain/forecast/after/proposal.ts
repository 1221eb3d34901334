import type { TaskTemplate } from '../../kit/order.ts';
import type { Minutes } from '../../tasks/task.ts';
import type { Shape } from '../forecast.ts';
import { logMoments } from '../learn/logMoments.ts';
import type { PlayedTask } from './played.ts';
import { templatesOf } from './templateOf.ts';

/** New minutes for one template task of a kit. */
export type Proposal = {
  /** The template's id in the kit. */
  readonly task: string;
  readonly name: string;
  readonly was: Minutes;
  readonly minutes: Minutes;
  /** How many builds and how many finished tasks it rests on. */
  readonly builds: number;
  readonly tasks: number;
};

/** The kit's own middle counts as much as this many builds, its width as this many tasks. Common practice, no source. */
export const kitCountsAs = 3;
const kitWidthCountsAs = 10;

/**
 * Proposes quick, likely and slow for the template tasks of a kit from `builds` of it, each given as its played tasks.
 *
 * Tasks of one build share its day and its crews, so a build counts once: for each template the mean logarithm of
 * actual over expected minutes in each build, and of these the mean, shrunk towards the kit (no shift) by
 * builds / (builds + 3). The width is that of all tasks about their mean, shrunk likewise by the number of tasks. Three-point
 * values are shifted and stretched on the scale of logarithms, so that they keep their order, and rounded to half minutes. Templates of
 * which nothing was told, or that would not change, are left out. Shrinkage after Efron and Morris, Journal of the
 * American Statistical Association 70, 1975, with a fixed weight.
 */
export function proposals(
  order: readonly TaskTemplate[],
  shape: Shape,
  builds: readonly (readonly PlayedTask[])[],
): Proposal[] {
  return order.flatMap((template): Proposal[] => {
    const moments = logMoments(shape, template.minutes);
    if (!moments) return [];
    const logs = builds
      .map((played) =>
        played
          .filter(({ task, usual }) => usual > 0 && templatesOf(order, task).includes(template))
          .map(({ usual, trust }) => ({ log: Math.log(usual) - moments.mean, trust })),
      )
      .filter((of) => of.length > 0);
    if (logs.length === 0) return [];
    const weight = logs.length / (logs.length + kitCountsAs);
    const middles = logs.map((of) => weighted(of, ({ log }) => log));
    const middle = middles.reduce((sum, each) => sum + each, 0) / logs.length;
    const wider = moments.variance > 0 ? widening(logs.flat(), moments.variance) : 1;
    const minutes = moved(template.minutes, moments.mean, weight * middle, wider);
    if (same(minutes, template.minutes)) return [];
    const { id, name, minutes: was } = template;
    const tasks = logs.reduce((sum, of) => sum + of.length, 0);
    return [{ task: id, name, was, minutes, builds: logs.length, tasks }];
  });
}

type Told = { readonly log: number; readonly trust: number };

function weighted(of: readonly Told[], value: (told: Told) => number): number {
  const trust = of.reduce((sum, told) => sum + told.trust, 0);
  return of.reduce((sum, told) => sum + told.trust * value(told), 0) / trust;
}

/** By how much the width of the curve changes: from the variance of the tasks about their mean and that of the kit. */
function widening(all: readonly Told[], kit: number): number {
  const middle = weighted(all, ({ log }) => log);
  const variance = weighted(all, ({ log }) => (log - middle) ** 2);
  // A task counts as far as its ticks are trusted, and one is used up by the mean.
  const count = all.reduce((sum, told) => sum + told.trust, 0);
  const free = Math.max(0, count - 1);
  const own = free > 0 ? (variance * count) / free : kit;
  return Math.sqrt((free * own + kitWidthCountsAs * kit) / (free + kitWidthCountsAs) / kit);
}

function moved({ quick, likely, slow }: Minutes, middle: number, shift: number, wider: number) {
  const to = (value: number) =>
    halves(Math.exp(middle + shift + wider * (Math.log(value) - middle)));
  return { quick: to(quick), likely: to(likely), slow: to(slow) };
}

/** Half a minute at least: an estimate of nothing would say that the task needs no time. */
function halves(minutes: number): number {
  return Math.max(0.5, Math.round(2 * minutes) / 2);
}

function same(one: Minutes, other: Minutes): boolean {
  return one.quick === other.quick && one.likely === other.likely && one.slow === other.slow;
}
