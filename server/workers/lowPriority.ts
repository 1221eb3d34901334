import { constants, setPriority } from 'node:os';

/** Whether a thread can have a priority of its own: on Linux alone. Elsewhere the call would slow the whole process. */
export const threadsHavePriority = process.platform === 'linux';

/**
 * Lets everything else on the machine go first, so that a long search takes only what nobody wants. In a thread on
 * Linux it is that thread alone, and those that it starts; else the whole process.
 */
export function lowerPriority(): void {
  try {
    setPriority(constants.priority.PRIORITY_LOW);
  } catch {
    // A container may forbid it; the search then shares the machine like anything else.
  }
}
