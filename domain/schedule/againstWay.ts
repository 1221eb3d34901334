import type { Refusal } from '../refusal.ts';
import { isFixed } from './fixed.ts';
import type { Manning } from './manning.ts';
import { finishAt, startAt } from './pace.ts';
import { secondsNotBefore } from './seconds.ts';
import type { Way } from './ways.ts';
import type { Wanted } from './whoCan.ts';
import { fixedAgainst, lightTooShort, windowTooShort } from './whyNoWay.ts';

/** What stands against this way by its times alone, whatever else is done when. */
export function againstWay({ manning, task, now }: Wanted, way: Way): Refusal | null {
  const { pace, seconds, from, to } = way;
  const begin = pace ? startAt(pace, from, seconds) : from;
  const finish = pace ? finishAt(pace, begin, seconds) : begin + seconds;
  if (isFixed(task, now)) {
    const wanted = secondsNotBefore(task.fixed!.start!);
    if (begin > wanted) {
      const crew = way.from > wanted ? 'its crew is not there then' : null;
      return fixedAgainst(task, crew ?? 'it would run into a rest of its crew or into the dark');
    }
    return finish > to ? fixedAgainst(task, 'its crew goes before it is done') : null;
  }
  if (task.daylight && !hasDayFor(manning, seconds)) {
    return lightTooShort(task, seconds);
  }
  return finish > to ? windowTooShort(task, seconds, Math.max(0, to - from)) : null;
}

/** False when all the days between the nights that are told are too short for it. */
function hasDayFor({ work }: Manning, seconds: number): boolean {
  const spells = work.dark?.spells ?? [];
  return (
    spells.length < 2 ||
    spells.some(
      ({ to }, at) => at + 1 < spells.length && (spells[at + 1]!.from - to) * 60 >= seconds,
    )
  );
}
