import { type Refusal, refusal } from '../../refusal.ts';
import { bad, good, type Result } from '../../result.ts';
import type { Author, Command } from '../command.ts';
import type { Consequence } from '../entry.ts';
import { withdrawalMinutes } from '../evolve.ts';
import { tasksToldBy, taskWithout } from '../fold/foldWithdrawal.ts';
import { minutesBetween } from '../instants.ts';
import { orderIndex } from '../orderIndex.ts';
import { standingOf } from '../standing.ts';
import type { BuildState } from '../state.ts';
import { undone } from './redo.ts';

/** Voids one tell: by its author within ten minutes of its arrival, by the leader at any time; no halt, near miss or decision. */
export function decideWithdrawal(
  state: BuildState,
  command: Extract<Command, { kind: 'withdraw' }>,
): Result<Consequence, Refusal> {
  const { entry } = command.body;
  const refused =
    refuseKind(state, entry) ?? refuseAuthor(state, entry, command.by, command.receivedAt);
  return refused ? bad(refused) : good(consequenceOf(state, entry));
}

function refuseKind(state: BuildState, entry: number): Refusal | null {
  const of = [String(entry)];
  if (entry > state.number)
    return refusal('entry-unknown', `There is no entry ${entry} yet: check its number.`, of);
  if (state.withdrawn.includes(entry))
    return refusal('already-withdrawn', `Entry ${entry} is withdrawn already: nothing to do.`, of);
  const event = state.events.find((each) => each.entry === entry)?.kind;
  if (event === 'halt' || state.halt?.entry === entry)
    return refusal(
      'halt-cannot-be-withdrawn',
      'A halt cannot be withdrawn: answer the roll call, then the leader lifts it.',
      of,
    );
  if (event === 'near-miss')
    return refusal(
      'near-miss-stays',
      'A near miss is never erased: tell another one if more is to be said.',
      of,
    );
  return isTell(state, entry)
    ? null
    : refusal(
        'entry-not-a-tell',
        `Entry ${entry} is a decision, or no longer counts for anything: only a tell can be withdrawn.`,
        of,
      );
}

function refuseAuthor(
  state: BuildState,
  entry: number,
  by: Author,
  receivedAt: string,
): Refusal | null {
  if (by.role === 'leader') return null;
  const of = [String(entry)];
  const late = refusal(
    'withdrawal-too-late',
    'Ten minutes have passed: ask the leader to withdraw it.',
    of,
  );
  const told = state.tells.find((tell) => tell.entry === entry);
  if (!told) return late;
  if (!isSame(told.by, by))
    return refusal(
      'not-the-author',
      `${told.by.name} told this: only ${told.by.name} or the leader can withdraw it.`,
      of,
    );
  return minutesBetween(told.receivedAt, receivedAt) > withdrawalMinutes ? late : null;
}

/** Whether two authors came by the same link. */
export function isSame(one: Author, other: Author): boolean {
  return one.role === other.role && one.name === other.name && one.crew === other.crew;
}

/** Whether an entry is a tell that still counts for something. */
function isTell(state: BuildState, entry: number): boolean {
  const told = (list: readonly { readonly entry: number }[]) =>
    list.some((each) => each.entry === entry);
  return (
    told(state.tells) ||
    told(state.events.filter(({ kind }) => kind === 'short')) ||
    told(state.water.tells) ||
    told(state.wind.tells) ||
    Object.values(state.crews).some(({ tells }) => told(tells)) ||
    Object.values(state.loads).some(({ tells }) => told(tells)) ||
    Object.values(state.tasks).some(
      ({ tells, inspections, earlier }) =>
        // Without a crew it is a decision or a halt.
        told([...tells, ...earlier.flatMap((attempt) => attempt.tells)].filter((t) => t.crew)) ||
        told(inspections.filter(({ kind }) => kind === 'failed')),
    )
  );
}

/** When finished work is no longer done without the tell, what was started on its strength is flagged. */
function consequenceOf(state: BuildState, entry: number): Consequence {
  const tasks = tasksToldBy(state, entry).filter((id) => {
    const before = state.tasks[id]!;
    const task = orderIndex(state.work).task.get(id);
    if (!task || before.status !== 'done') return false;
    return standingOf(taskWithout(before, entry), task, state.plan).status !== 'done';
  });
  return tasks.length > 0 ? undone(state, tasks) : {};
}
