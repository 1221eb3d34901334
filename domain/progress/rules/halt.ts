import { type Refusal, refusal } from '../../refusal.ts';
import { bad, good, type Result } from '../../result.ts';
import type { Consequence } from '../entry.ts';
import { minutesBetween } from '../instants.ts';
import { isAtWork } from '../standing.ts';
import type { BuildState } from '../state.ts';
import { crewLabel } from '../words.ts';
import { lapsedByHalt } from './lapses.ts';

/** A halt is never refused. It stops what is at work and makes passes worthless that do not outlast one. */
export function consequenceOfHalt(state: BuildState): Consequence {
  const stopped = Object.entries(state.tasks)
    .filter(([, task]) => isAtWork(task))
    .map(([id]) => id);
  const lapsed = lapsedByHalt(state);
  return {
    ...(stopped.length > 0 ? { stopped } : {}),
    ...(lapsed.length > 0 ? { lapsed } : {}),
  };
}

/** A halt is lifted once every crew on site has answered the roll call with everyone it has. */
export function decideLift(state: BuildState, at: string): Result<Consequence, Refusal> {
  if (!state.halt) return bad(refusal('no-halt', 'No halt is on: nothing to lift.'));
  const open = rollCall(state, at).filter(({ answered }) => !answered);
  if (open.length === 0) return good({});
  const sentence = `The roll call is open. ${open.map((each) => each.sentence).join(' ')}`;
  return bad(
    refusal(
      'roll-call-open',
      sentence,
      open.map(({ crew }) => crew),
    ),
  );
}

/** How one crew stands in the roll call. */
export type RollCall = {
  readonly crew: string;
  readonly answered: boolean;
  readonly sentence: string;
};

/**
 * The roll call of a halt: every crew with people, apart from those whose hours by the order of work are not now and
 * of which nothing was told. Empty without a halt.
 */
export function rollCall(state: BuildState, at: string): RollCall[] {
  const { halt } = state;
  if (!halt) return [];
  return Object.entries(state.crews)
    .filter(([crew, { fit }]) => fit > 0 && isOnSite(state, crew, at))
    .map(([crew, { fit }]) => {
      const name = crewLabel(state, crew);
      const said = halt.acknowledged[crew];
      if (!said)
        return { crew, answered: false, sentence: `${name} has not answered: ask for its count.` };
      const whole = said.people >= fit && said.people >= said.of;
      const counted = `${name} counts ${said.people} of ${Math.max(fit, said.of)}`;
      const sentence = whole
        ? `${counted}.`
        : `${counted}: find who is missing, or tell its new strength and count again.`;
      return { crew, answered: whole, sentence };
    });
}

/** Whether a crew is on site at a moment: within its hours, or heard of. */
export function isOnSite(state: BuildState, crew: string, at: string): boolean {
  if ((state.crews[crew]?.tells.length ?? 0) > 0) return true;
  const hours = state.work.crews.find(({ id }) => id === crew);
  const minutes = minutesBetween(state.start, at);
  // Crews gather before the planned start: only one that comes later in the build is not there yet.
  const come = !hours?.from || minutes >= hours.from;
  return come && (hours?.to === undefined || minutes < hours.to);
}
