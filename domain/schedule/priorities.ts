import type { Compiled } from './compile.ts';
import { headsAndTails } from './headsAndTails.ts';

/** Tasks for which "most successors" is still counted exactly. */
const mostCounted = 4000;

/**
 * Keys by which tasks are taken in turn, least first, one array for each rule: latest finish, latest start, least
 * slack, most successors in all, rank weight (own length and that of what comes next), most work for the crews.
 * The rules are common practice; for their record see Kolisch, European Journal of Operational Research 90, 1996.
 */
export function priorityKeys(compiled: Compiled): Float64Array[] {
  const { count } = compiled;
  const { quickest, head, tail } = headsAndTails(compiled);
  const end = head.reduce((latest, start, task) => {
    return Math.max(latest, start + (tail[task] === Number.NEGATIVE_INFINITY ? 0 : tail[task]!));
  }, 0);
  const lateStart = lateStarts(compiled, quickest, end);
  const lateFinish = lateStart.map((start, task) => start + quickest[task]!);
  const slack = lateStart.map((start, task) => start - head[task]!);
  const successors = successorCounts(compiled);
  const rankWeight = new Float64Array(count);
  const crewWork = new Float64Array(count);
  for (let task = 0; task < count; task += 1) {
    let weight = quickest[task]!;
    for (let at = compiled.afterHead[task]!; at < compiled.afterHead[task + 1]!; at += 1) {
      weight += quickest[compiled.after[at]!]!;
    }
    rankWeight[task] = -weight;
    crewWork[task] = lateFinish[task]! - quickest[task]! * load(compiled, task);
  }
  return [lateFinish, lateStart, slack, crewWork, successors.map((number) => -number), rankWeight];
}

/** Latest starts for an end at `end`, also of tasks that do not lead to the opening; the hours of crews taken in. */
function lateStarts(compiled: Compiled, quickest: Float64Array, end: number): Float64Array {
  const { count, wayHead, to } = compiled;
  const late = new Float64Array(count);
  for (let task = count - 1; task >= 0; task -= 1) {
    let goes = 0;
    for (let w = wayHead[task]!; w < wayHead[task + 1]!; w += 1) {
      goes = Math.max(goes, to[w]!);
    }
    let start = Math.min(end, goes) - quickest[task]!;
    for (let at = compiled.afterHead[task]!; at < compiled.afterHead[task + 1]!; at += 1) {
      const length = compiled.afterFromStart[at] ? 0 : quickest[task]!;
      start = Math.min(start, late[compiled.after[at]!]! - compiled.afterWait[at]! - length);
    }
    late[task] = start;
  }
  return late;
}

/** Share of what there is that the task's first way holds, added up over its resources. */
function load(compiled: Compiled, task: number): number {
  const w = compiled.wayHead[task]!;
  let share = 0;
  for (let use = compiled.useHead[w]!; use < compiled.useHead[w + 1]!; use += 1) {
    share += compiled.useAmount[use]! / compiled.capacity[compiled.useOf[use]!]!;
  }
  return share;
}

/** How many tasks come after each, in all; for very long orders only those that come next. */
function successorCounts(compiled: Compiled): Float64Array {
  const { count, afterHead, after } = compiled;
  const counts = new Float64Array(count);
  if (count > mostCounted) {
    return counts.map((_, task) => afterHead[task + 1]! - afterHead[task]!);
  }
  const words = Math.ceil(count / 32);
  const reached = new Int32Array(count * words);
  for (let task = count - 1; task >= 0; task -= 1) {
    for (let at = afterHead[task]!; at < afterHead[task + 1]!; at += 1) {
      const next = after[at]!;
      reached[task * words + (next >> 5)]! |= 1 << (next & 31);
      for (let word = 0; word < words; word += 1) {
        reached[task * words + word]! |= reached[next * words + word]!;
      }
    }
    for (let word = 0; word < words; word += 1) {
      counts[task]! += bitCount(reached[task * words + word]!);
    }
  }
  return counts;
}

function bitCount(word: number): number {
  let bits = word - ((word >>> 1) & 0x55555555);
  bits = (bits & 0x33333333) + ((bits >>> 2) & 0x33333333);
  return Math.imul((bits + (bits >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}
