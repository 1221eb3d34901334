// What a change of orders costs, in one place. A minute for each order that changes: a chief is told, people turn
// round, tools are fetched. Never more than a quarter of an hour in all: by then the chiefs are called together and
// told a new plan once. A new plan is worth that only when it opens so much earlier. Common practice, no source.

/** Minutes that one changed order costs. */
const minutesForOrder = 1;

/** Minutes that all changed orders cost at most. */
const mostMinutes = 15;

/** Gains below this are within what anybody can tell from a clock. */
const leastGain = 1;

/** Minutes that so many changed orders cost. */
export function costOfChanges(changedOrders: number): number {
  return Math.min(mostMinutes, minutesForOrder * changedOrders);
}

/** Whether opening `gain` minutes earlier is worth changing so many orders. */
export function isWorthChanging(gain: number, changedOrders: number): boolean {
  return gain >= leastGain && gain > costOfChanges(changedOrders);
}
