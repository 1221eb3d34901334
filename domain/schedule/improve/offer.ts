import type { Work } from '../../tasks/work.ts';
import type { Plan } from '../plan.ts';
import { carriedOn } from './carriedOn.ts';
import { changedOrders, type Order } from './changedOrders.ts';
import { isWorthChanging } from './stability.ts';

/** What a new plan brings over the accepted one and what it costs. */
export type Offer = {
  /** Minutes that the new plan opens earlier than the accepted one kept to from now on; negative when later. */
  readonly gain: number;
  /** Tasks not yet begun that go to another crew, other people or another place in a crew's order. */
  readonly changedOrders: number;
  /** Ids of the crews that hear of a change, in the order of the work. */
  readonly crews: string[];
  /** The accepted plan cannot be kept to any more; `gain` is then 0. */
  readonly needed: boolean;
};

/** Compares a plan made at `nowMinutes` with the accepted one, both from now on. `work` is what `fresh` was made for. */
export function offerOf(work: Work, accepted: Plan, fresh: Plan, nowMinutes: number): Offer {
  const begun = new Set(
    fresh.tasks.filter(({ reason }) => reason.kind === 'past').map(({ task }) => task),
  );
  const changed = changedOrders(ordersOf(accepted, begun), ordersOf(fresh, begun));
  const opens = carriedOn(work, accepted, fresh, nowMinutes);
  return {
    gain: opens === null ? 0 : opens - fresh.minutesToOpen,
    changedOrders: changed.tasks.size,
    crews: work.crews.map(({ id }) => id).filter((id) => changed.crews.has(id)),
    needed: opens === null,
  };
}

/** Whether to put the new plan before the leader: it is needed, or gains more than the changes cost. */
export function isWorthOffering({ gain, changedOrders: changes, needed }: Offer): boolean {
  return needed || isWorthChanging(gain, changes);
}

/** The offer in words: "opens 14 min earlier; changes 5 orders for 2 crews". */
export function offerSentence({ gain, changedOrders: changes, crews, needed }: Offer): string {
  const minutes = Math.round(gain);
  const opens =
    minutes === 0
      ? 'opens at the same time'
      : `opens ${Math.abs(minutes)} min ${minutes > 0 ? 'earlier' : 'later'}`;
  const what = needed ? 'the accepted plan cannot be kept to' : opens;
  if (changes === 0) {
    return `${what}; changes no orders`;
  }
  return `${what}; changes ${counted(changes, 'order')} for ${counted(crews.length, 'crew')}`;
}

/** Orders of people at work; tasks that nobody has to do are nobody's order. */
function ordersOf(plan: Plan, begun: ReadonlySet<string>): Order[] {
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
