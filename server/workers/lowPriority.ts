import { constants, setPriority } from 'node:os';

/**
 * Lets everything else on the machine go first, so that a long search takes only what nobody wants. Linux counts the
 * priority of each thread by itself: there it is lowered for the calling thread alone. Elsewhere the call would slow
 * the whole server, and is left out: the search is one thread, and other cores stay free.
 */
export function lowerThreadPriority(): void {
  if (process.platform !== 'linux') return;
  try {
    setPriority(constants.priority.PRIORITY_LOW);
  } catch {
    // A container may forbid it; the search then shares the machine like any other thread.
  }
}
