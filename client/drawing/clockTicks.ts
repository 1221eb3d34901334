const steps = [5, 10, 15, 30, 60, 120, 180, 360, 720, 1440];

/**
 * Round clock times between two moments, at most so many. All in minutes after the start of the build, which stands
 * at `startAt` milliseconds since 1970.
 */
export function clockTicks(startAt: number, from: number, to: number, most: number): number[] {
  const step = steps.find((each) => (to - from) / each <= most) ?? 1440;
  return ticksEvery(startAt, from, to, step);
}

/** The round clock times every `step` minutes between two moments, both included. */
export function ticksEvery(startAt: number, from: number, to: number, step: number): number[] {
  const startMinute = startAt / 60_000;
  const ticks: number[] = [];
  let tick = Math.ceil((startMinute + from) / step) * step - startMinute;
  for (; tick <= to; tick += step) ticks.push(tick);
  return ticks;
}
