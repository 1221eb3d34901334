/** Time as the device tells it, and waiting. A port, so that tests can run an hour in a moment. */
export type Clock = {
  /** Milliseconds since 1970, device time. */
  readonly now: () => number;
  /** Calls back once after so many milliseconds; the answer cancels it. */
  readonly after: (milliseconds: number, then: () => void) => () => void;
};

export const deviceClock: Clock = {
  now: () => Date.now(),
  after: (milliseconds, then) => {
    const timer = setTimeout(then, milliseconds);
    return () => clearTimeout(timer);
  },
};
