import { type Refusal, refusal } from '../refusal.ts';
import type { Compilation } from './compile.ts';
import type { Manning } from './manning.ts';
import type { StrengthStep } from './strength.ts';
import { named } from './whyNoWay.ts';

/**
 * Why the search came back without a plan: fixed starts that what comes before them, or what is fixed beside them,
 * leaves no room for; else the hours of crews that go.
 */
export function nothingFound(
  { work, strengths }: Manning,
  { compiled, tasks }: Compilation,
): Refusal {
  const fixed = tasks.filter((_, number) => compiled.fixed[number] === 1);
  if (fixed.length > 0) {
    const names = fixed.map((task) => `${named(task)} at minute ${task.fixed?.start}`).join(', ');
    const sentence = `No order was found that starts ${names}: people, room or equipment are held then, or what comes before takes too long. Fix it later, or free it.`;
    return refusal(
      'fixed-blocked',
      sentence,
      fixed.map(({ id }) => id),
    );
  }
  const weaker = (steps: readonly StrengthStep[]) =>
    steps.some(({ people }, at) => at > 0 && people < steps[at - 1]!.people);
  const going = work.crews.filter(
    ({ to }, row) => to !== undefined || weaker(strengths[row] ?? []),
  );
  const names = going.map(({ name }) => name).join(', ');
  const sentence = `No order was found that finishes the work of ${names} before they go. Give them longer hours, more people, or less to do.`;
  return refusal(
    'window-too-short',
    sentence,
    going.map(({ id }) => id),
  );
}
