import type { Refusal } from '../refusal.ts';
import type { Task } from '../tasks/task.ts';
import type { Compiled } from './compile.ts';
import { headsAndTails } from './headsAndTails.ts';
import { secondsNotBefore } from './seconds.ts';
import { fixedAgainst, named } from './whyNoWay.ts';

/** True for a task whose start the leader has fixed, and that time has not gone by. `now` in seconds. */
export function isFixed({ fixed }: Task, now: number): boolean {
  return fixed?.start !== undefined && secondsNotBefore(fixed.start) >= now;
}

/** Why a task cannot start when it is fixed to, whoever does what: stores come later, or what it comes after. */
export function fixedBlocked(compiled: Compiled, tasks: readonly Task[]): Refusal | null {
  if (!compiled.anyFixed) {
    return null;
  }
  const { head, done } = headsAndTails(compiled);
  const { beforeHead, before, beforeFromStart, beforeWait, wayHead, from, release } = compiled;
  for (const [number, task] of tasks.entries()) {
    const start = from[wayHead[number]!]!;
    if (compiled.fixed[number] === 0 || head[number]! <= start) {
      continue;
    }
    if (release[number]! > start) {
      const what = `its stores, or what is at work before it, let it start at minute ${release[number]! / 60}`;
      return fixedAgainst(task, what);
    }
    for (let at = beforeHead[number]!; at < beforeHead[number + 1]!; at += 1) {
      const other = before[at]!;
      const counted = beforeFromStart[at] ? head[other]! : done[other]!;
      if (counted + beforeWait[at]! > start) {
        const says = `${named(tasks[other]!)} lets it start at minute ${(counted + beforeWait[at]!) / 60}`;
        return fixedAgainst(task, says, [tasks[other]!.id]);
      }
    }
  }
  return null;
}
