import type { Random } from '../draws.ts';
import { lookUp } from '../drawTable.ts';
import type { Events } from './compileEvents.ts';

/** Where one run keeps what the events need: who makes each task late, and room for the longest redo list. */
export type EventRoom = {
  readonly groupOf: Int32Array;
  readonly groupFactor: Float64Array;
  readonly done: Float64Array;
};

/**
 * Lets happen in one run what happens: late trucks move `from` (by task, minutes after the start of the build), jams
 * and failed holds make `minutes` longer. A failed hold takes its redo list, as its links allow, and itself again, for
 * each time that it fails. Takes the same random numbers whatever happens.
 */
export function drawEvents(
  { trucks, jams, holds }: Events,
  tables: Float64Array,
  random: Random,
  minutes: Float64Array,
  from: Float64Array,
  { groupOf, groupFactor, done }: EventRoom,
): void {
  for (let k = 0; k < trucks.length; k++) {
    const truck = trucks[k]!;
    const happens = random.next() >>> 0 < truck.below;
    const delay = truck.quick + truck.range * lookUp(tables, truck.tableAt, random.next());
    if (!happens) continue;
    const { tasks } = truck;
    for (let n = 0; n < tasks.length; n++) {
      const task = tasks[n]!;
      if (truck.arrives + delay > from[task]!) from[task] = truck.arrives + delay;
    }
  }
  for (let k = 0; k < jams.length; k++) {
    const jam = jams[k]!;
    const happens = random.next() >>> 0 < jam.below;
    const delay = jam.quick + jam.range * lookUp(tables, jam.tableAt, random.next());
    if (happens) minutes[jam.task]! += delay;
  }
  for (let k = 0; k < holds.length; k++) {
    const hold = holds[k]!;
    const luck = random.next() >>> 0;
    let longest = 0;
    for (let n = 0; n < hold.redo.length; n++) {
      const { task, quick, range, tableAt, after } = hold.redo[n]!;
      const own = quick + range * lookUp(tables, tableAt, random.next());
      let begin = 0;
      for (let a = 0; a < after.length; a++) begin = Math.max(begin, done[after[a]!]!);
      done[n] = begin + own * groupFactor[groupOf[task]!]!;
      if (done[n]! > longest) longest = done[n]!;
    }
    if (luck < hold.below) {
      const again = longest + minutes[hold.task]!;
      minutes[hold.task]! += luck < hold.belowTwice ? 2 * again : again;
    }
  }
}
