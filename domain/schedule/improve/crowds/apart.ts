import type { Compiled } from '../../compile.ts';
import type { HeadsAndTails } from '../../headsAndTails.ts';

/**
 * Which tasks can never run at the same time in a plan that opens before second `deadline`: links lead from the finish
 * of one to the start of the other, or one must be finished before the other can start. 1 at `one * count + other`, both
 * ways round. Only for tasks that must be finished by the opening.
 */
export function apart(
  compiled: Compiled,
  { quickest, head, rest }: HeadsAndTails,
  deadline: number,
): Uint8Array {
  const { count, afterHead, after, afterFromStart, afterWait } = compiled;
  const shut = new Uint8Array(count * count);
  // From the finish of a task to the start of every other.
  const far = new Float64Array(count);
  for (let task = 0; task < count; task += 1) {
    far.fill(Number.NEGATIVE_INFINITY);
    for (let at = task; at < count; at += 1) {
      if (at !== task && far[at] === Number.NEGATIVE_INFINITY) {
        continue;
      }
      if (at !== task && far[at]! >= 0) {
        shut[task * count + at] = 1;
        shut[at * count + task] = 1;
      }
      for (let link = afterHead[at]!; link < afterHead[at + 1]!; link += 1) {
        const next = after[link]!;
        const begun = at === task ? Number.NEGATIVE_INFINITY : far[at]!;
        const counted =
          afterFromStart[link] === 1 ? begun : at === task ? 0 : begun + quickest[at]!;
        far[next] = Math.max(far[next]!, counted + afterWait[link]!);
      }
    }
    for (let other = 0; other < count; other += 1) {
      if (deadline - rest[other]! <= head[task]!) {
        shut[task * count + other] = 1;
        shut[other * count + task] = 1;
      }
    }
  }
  return shut;
}
