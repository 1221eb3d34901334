/** Milliseconds to wait before try number `tries` (1 is the first repeat): 1, 2, 4, 8, then 15 seconds. */
export function backoff(tries: number): number {
  return Math.min(15_000, 1000 * 2 ** Math.max(0, tries - 1));
}

/** Waits by the clock; ends early when stopped. */
export function pause(
  clock: { readonly after: (milliseconds: number, then: () => void) => () => void },
  milliseconds: number,
  stop: AbortSignal,
): Promise<void> {
  return new Promise((resolve) => {
    if (stop.aborted) return resolve();
    const cancel = clock.after(milliseconds, resolve);
    stop.addEventListener(
      'abort',
      () => {
        cancel();
        resolve();
      },
      { once: true },
    );
  });
}
