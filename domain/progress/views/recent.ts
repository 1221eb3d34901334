import type { Author } from '../command.ts';
import { withdrawalMinutes } from '../evolve.ts';
import { minutesBetween } from '../instants.ts';
import { isSame } from '../rules/withdrawal.ts';
import type { BuildState, WithdrawableTell } from '../state.ts';

/**
 * The recent tells that an author may withdraw now (ISO 8601 UTC), in order of arrival: their own for ten minutes,
 * for the leader all of them. Older ones the leader withdraws by number.
 */
export function withdrawable(state: BuildState, author: Author, now: string): WithdrawableTell[] {
  return state.tells.filter(
    ({ by, receivedAt }) =>
      author.role === 'leader' ||
      (isSame(by, author) && minutesBetween(receivedAt, now) <= withdrawalMinutes),
  );
}
