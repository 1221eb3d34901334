import type { Past } from '../past.ts';
import type { Plan } from '../plan.ts';
import { changedOrders, type Order } from './changedOrders.ts';
import { begunOf, hindrance, opensKeptTo, type PlannedWork } from './keptTo.ts';
import { isWorthChanging } from './stability.ts';

/** What a new plan brings over the accepted one and what it costs. */
export type Offer = {
  /** Minutes that the new plan opens earlier than the accepted one, both kept to from now on; negative when later. */
  readonly gain: number;
  /** Minutes after the start of the build at which the new plan opens when it is kept to from now on. */
  readonly opens: number;
  /** The same of the accepted plan, done with the people there are; null when it is for other tasks. */
  readonly acceptedOpens: number | null;
  /** Tasks not yet begun that go to another crew, other people or another place in a crew's order. */
  readonly changedOrders: number;
  /** Ids of the crews that hear of a change, in the order of the work. */
  readonly crews: string[];
  /** The accepted plan cannot be kept to any more; `gain` is then 0. */
  readonly needed: boolean;
};

/**
 * Compares a plan made at `past.now` with the accepted one, each in its own work, both by the same rule from now on:
 * the course they take with what has happened, with loads as they are told and with the dark.
 */
export function offerOf(fresh: PlannedWork, accepted: PlannedWork, past: Past): Offer {
  const begun = begunOf(past);
  const changed = changedOrders(ordersOf(accepted.plan, begun), ordersOf(fresh.plan, begun));
  const hindered = hindrance(accepted, past);
  const opens = opensKeptTo(fresh, past);
  const acceptedOpens = hindered === 'tasks' ? null : opensKeptTo(accepted, past);
  const needed = hindered !== null;
  return {
    gain: needed || acceptedOpens === null ? 0 : acceptedOpens - opens,
    opens,
    acceptedOpens,
    changedOrders: changed.tasks.size,
    crews: fresh.work.crews.map(({ id }) => id).filter((id) => changed.crews.has(id)),
    needed,
  };
}

/** Whether to put the new plan before the leader: it is needed, or gains more than the changes cost. */
export function isWorthOffering({ gain, changedOrders: changes, needed }: Offer): boolean {
  return needed || isWorthChanging(gain, changes);
}

/** The offer in words, minutes as clocks show them: "opens 14 min earlier; changes 5 orders for 2 crews". */
export function offerSentence(offer: Offer): string {
  const { opens, acceptedOpens, changedOrders: changes, crews, needed } = offer;
  const earlier = acceptedOpens === null ? 0 : minuteShown(acceptedOpens) - minuteShown(opens);
  const when =
    earlier === 0
      ? 'opens at the same time'
      : `opens ${Math.abs(earlier)} min ${earlier > 0 ? 'earlier' : 'later'}`;
  const what = needed ? 'the accepted plan cannot be kept to' : when;
  if (changes === 0) {
    return `${what}; changes no orders`;
  }
  return `${what}; changes ${counted(changes, 'order')} for ${counted(crews.length, 'crew')}`;
}

/**
 * The whole minute of an opening, as a clock shows it, in minutes after the start. Two openings are so many minutes apart
 * as their times on the page are. Rounding of less than a second is no minute.
 */
export function minuteShown(opening: number): number {
  return Math.floor(Math.round(opening * 60) / 60);
}

/** Orders of people at work; tasks that nobody has to do are nobody's order. */
function ordersOf(plan: Plan, begun: ReadonlyMap<string, unknown>): Order[] {
  return plan.tasks
    .filter(({ task }) => !begun.has(task))
    .flatMap(({ task, crews, start }) =>
      crews
        .filter(({ people }) => people > 0)
        .map(({ crew, people }) => ({ task, crew, people, start })),
    );
}

function counted(count: number, one: string): string {
  return `${count} ${count === 1 ? one : `${one}s`}`;
}
