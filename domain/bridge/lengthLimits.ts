import type { Kit } from '../kit/kit.ts';
import type { Ground } from './ground.ts';
import { lengthNeeded, loadClassAt, longestFor } from './reach.ts';
import { type Limit, metres } from './way.ts';

/** What stands against a bridge of so many bays when the ground needs at least `needed`: length and load class. */
export function lengthLimits(ground: Ground, kit: Kit, bays: number, needed: number): Limit[] {
  const over = lengthNeeded(ground, kit) - ground.gap;
  if (!Number.isInteger(bays)) {
    return [{ sentence: `A bridge has whole bays, and ${bays} are wished.`, of: ['bays'] }];
  }
  if (Math.max(bays, needed) > kit.bay.most) {
    return [tooLong(ground, kit, Math.max(bays, needed), over)];
  }
  if (bays < needed) {
    const sentence = `${bays} bays make ${metres(bays * kit.bay.length)}; gap, setbacks and bearings need ${metres(lengthNeeded(ground, kit))}: take at least ${needed} bays.`;
    return [{ sentence, of: ['bays'] }];
  }
  const loadClass = loadClassAt(kit, bays * kit.bay.length) ?? 0;
  return loadClass < ground.loadClass ? [tooWeak(ground, kit, bays, loadClass, over)] : [];
}

function tooLong(ground: Ground, kit: Kit, bays: number, over: number): Limit {
  const most = kit.bay.most * kit.bay.length;
  const free =
    most > over
      ? `find a gap of ${metres(most - over)} or less, or another kit`
      : 'take another kit';
  const sentence = `The gap of ${metres(ground.gap)} with ${metres(over)} for setbacks and bearings takes ${bays} bays and ${kit.title} has at most ${kit.bay.most} (${metres(most)}): ${free}.`;
  return { sentence, of: ['gap', 'bays'] };
}

function tooWeak(ground: Ground, kit: Kit, bays: number, loadClass: number, over: number): Limit {
  const longest = longestFor(kit, ground.loadClass);
  const free =
    longest === null || longest <= over
      ? 'no length of this kit carries it over a gap: ask for less, or take another kit'
      : `it is carried up to ${metres(longest)}, a gap of ${metres(longest - over)}: find a narrower place or ask for less`;
  const sentence = `A bridge of ${metres(bays * kit.bay.length)} carries class ${loadClass} and class ${ground.loadClass} is asked: ${free}.`;
  return { sentence, of: ['loadClass'] };
}
