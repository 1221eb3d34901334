import type { BuildState, Halt, TaskTell } from '../state.ts';
import type { KnownEntry } from '../upcast.ts';
import { changeTask } from './changeTask.ts';
import { lapseHolds } from './consequences.ts';
import { addEvent } from './events.ts';

type Of<Kind extends KnownEntry['kind']> = Extract<KnownEntry, { kind: Kind }>;

/** What a halt tells of every task that was at work. */
export function haltedTell(halt: Halt): TaskTell {
  const { entry, by, since } = halt;
  return { entry, kind: 'halted', crew: '', by, at: since, why: 'halt' };
}

/** A stop call: work stops, nothing told clear holds, the roll call starts anew. */
export function foldHalt(state: BuildState, entry: Of<'halt-called'>): BuildState {
  const { number, by, happenedAt, body } = entry;
  const said = entry.saidBy ?? by.name;
  const since = state.halt?.since ?? happenedAt;
  const halt: Halt = {
    entry: number,
    by,
    why: body.why,
    at: happenedAt,
    since,
    acknowledged: {},
  };
  const stopped = (entry.consequence?.stopped ?? []).reduce(
    (sofar, id) =>
      changeTask(sofar, id, (task) => ({
        ...task,
        tells: [...task.tells, { ...haltedTell(halt), at: happenedAt }],
      })),
    state,
  );
  const lapsed = lapseHolds(stopped, entry, 'after a halt');
  const sentence = `${said} called halt${body.why ? `: ${body.why}` : ''}.`;
  return addEvent({ ...lapsed, halt, clearances: {} }, entry, { kind: 'halt', sentence });
}

/**
 * A crew has loads down and stands clear. Comes to nothing when the halt was lifted before it arrived, or when it was
 * said before the last call: then the crew has to answer again.
 */
export function foldAcknowledgment(state: BuildState, entry: Of<'halt-acknowledged'>): BuildState {
  const { halt } = state;
  if (!halt || Date.parse(entry.happenedAt) < Date.parse(halt.at)) return state;
  const { crew, people, of } = entry.body;
  const said = { people, of, at: entry.happenedAt, entry: entry.number };
  return { ...state, halt: { ...halt, acknowledged: { ...halt.acknowledged, [crew]: said } } };
}
