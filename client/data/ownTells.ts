import { type Author, type Command, tells } from '#domain/progress/command.ts';
import { decide } from '#domain/progress/decide.ts';
import { evolve } from '#domain/progress/evolve.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { isOpen, type Sending } from './sender.ts';

/**
 * The state with this device's own tells on top that the server has not confirmed yet, so that a tick shows at once,
 * also without a link. Asks are decisions of the server and never folded here. `skew` corrects the device's clock.
 */
export function withOwnTells(
  state: BuildState,
  sendings: readonly Sending[],
  you: Author,
  skew: number,
  now: number,
): BuildState {
  return sendings
    .filter((one) => isAhead(one, state.number))
    .reduce((folded, { id, kind, body, happenedAt, saidBy }) => {
      const command = {
        id,
        kind,
        body,
        by: you,
        ...(saidBy === undefined ? {} : { saidBy }),
        happenedAt: new Date(Date.parse(happenedAt) + skew).toISOString(),
        receivedAt: new Date(now + skew).toISOString(),
      } as Command;
      const decision = decide(folded, command);
      if (!decision.ok) return folded;
      return decision.value.reduce(
        (each, entry) => evolve(each, { ...entry, number: each.number + 1 }),
        folded,
      );
    }, state);
}

/** Told here, and not in the state yet: on its way, or confirmed and not yet heard back through the feed. */
function isAhead(one: Sending, number: number): boolean {
  if (!(one.kind in tells) || one.takenBack) return false;
  if (isOpen(one)) return true;
  return one.receipt?.outcome === 'recorded' && one.receipt.entry > number;
}
