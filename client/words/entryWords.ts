import { conditionsUsed } from '#domain/forecast/doubt/conditions.ts';
import type { Doubt } from '#domain/forecast/doubt/doubt.ts';
import { sourcesOfDoubt } from '#domain/forecast/doubt/sources.ts';
import type { CommandBody, CommandKind } from '#domain/progress/command.ts';
import { entryKinds } from '#domain/progress/entry.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { crewLabel, inWords, taskLabel } from '#domain/progress/words.ts';
import { centimetres, clock, metres, people, percent } from './units.ts';

/** A command or its entry, as far as words need it. */
type Told = { readonly kind: string; readonly body: unknown };

type Named = Pick<BuildState, 'work' | 'zone'>;

const commandKinds = new Map<string, CommandKind>(
  Object.entries(entryKinds).flatMap(([command, entry]) => [
    [command, command as CommandKind],
    [entry, command as CommandKind],
  ]),
);

/** What a command says, or what its entry said, as one sentence without a full stop. Kinds nobody knows keep their name. */
export function entrySentence(state: Named, { kind, body }: Told): string {
  const command = commandKinds.get(kind);
  if (!command) return `An entry of another kind: ${kind}`;
  const say = sentences[command] as (state: Named, body: unknown) => string;
  return say(state, body);
}

type Sentences = {
  readonly [Kind in CommandKind]: (state: Named, body: CommandBody<Kind>) => string;
};

const because = (why: string): string => (why.trim() === '' ? '' : `: ${why.trim()}`);

const sentences: Sentences = {
  'open-build': (_, { name }) => `Build opened: ${name}`,
  'choose-bridge': (_, { bridge }) =>
    `Bridge chosen: ${bridge.bays} bays, ${metres(bridge.length)}, class ${bridge.loadClass}`,
  'accept-plan': (_, { gain }) => `Plan accepted${because(gain)}`,
  'start-keep-off': (state, { task }) => `Everyone off: ${taskLabel(state, task)} started`,
  'pass-hold': (state, { task, name, remark, reason, concession }) =>
    `${name} passed ${taskLabel(state, task)}${because(remark)}${
      concession === undefined
        ? ''
        : `; by concession of ${concession.name}, ${concession.authority}${because(concession.reason)}`
    }${reason?.trim() ? `; outside its range${because(reason)}` : ''}`,
  'lift-halt': (_, { name }) => `Halt lifted by ${name}`,
  'reopen-task': (state, { task, why, also }) =>
    `Reopened ${taskLabel(state, task)}${because(why)}${
      also.length === 0 ? '' : `; with it ${inWords(also.map((id) => taskLabel(state, id)))}`
    }`,
  'settle-task': (state, { task, status }) =>
    `Leader decides: ${taskLabel(state, task)} is ${status}`,
  'set-confidence': (_, { confidence }) => `The headline now says ${percent(confidence)} sure`,
  'set-asked-for': (state, { askedFor }) =>
    askedFor === null
      ? 'No opening is asked for'
      : `Opening asked for by ${clock(askedFor, state.zone)}`,
  'set-doubt': (_, { doubt }) => `Doubt set: ${inWords(doubtsOn(doubt)) || 'all switched off'}`,
  'tell-started': (state, { task, crew }) =>
    `${crewLabel(state, crew)} started ${taskLabel(state, task)}`,
  'tell-finished': (state, { task, crew }) =>
    `${crewLabel(state, crew)} finished ${taskLabel(state, task)}`,
  'tell-stopped': (state, { task, crew, why }) =>
    `${crewLabel(state, crew)} stopped ${taskLabel(state, task)}${because(why)}`,
  'tell-resumed': (state, { task, crew }) =>
    `${crewLabel(state, crew)} goes on with ${taskLabel(state, task)}`,
  'tell-part': (state, { task, crew, part }) =>
    `${crewLabel(state, crew)} has ${percent(part)} of ${taskLabel(state, task)} done`,
  'tell-strength': (state, { crew, fit }) => `${crewLabel(state, crew)}: ${fit} fit`,
  'tell-off': (state, { task, crew, off, of }) =>
    `${crewLabel(state, crew)} off, ${off} of ${of}, for ${taskLabel(state, task)}`,
  'tell-clear': (state, { task, bank, name, people: count }) =>
    `Seen clear on the ${bank} bank by ${name}, ${people(count)}, for ${taskLabel(state, task)}`,
  'tell-load-in': (state, { load }) => `${loadLabel(state, load)} is in`,
  'tell-load-late': (state, { load, minutes, why }) =>
    `${loadLabel(state, load)} is ${minutes} min late${because(why)}`,
  'tell-short': (state, { part, count, task }) =>
    `Short of ${count} ${part}${task === undefined ? '' : ` for ${taskLabel(state, task)}`}`,
  'tell-hurt': (state, { crew, what, outOfWork }) =>
    `${crewLabel(state, crew)}, one hurt${outOfWork ? ' and out of work' : ''}${because(what)}`,
  'tell-near-miss': (_, { what }) => `Near miss${because(what)}`,
  'tell-water': (_, { rise, level }) =>
    `Water ${rise < 0 ? 'falling' : 'rising'} ${centimetres(Math.abs(rise))} an hour${
      level === null ? '' : `, level ${metres(level, 2)}`
    }`,
  'tell-wind': (_, { speed }) => `Wind ${speed} m/s`,
  'tell-relief': (state, { crew }) => `${crewLabel(state, crew)} relieved`,
  'fail-hold': (state, { task, name, why }) =>
    `${name} failed ${taskLabel(state, task)}${because(why)}`,
  halt: (_, { why }) => `Halt${because(why)}`,
  'acknowledge-halt': (state, { crew, people: count, of }) =>
    `${crewLabel(state, crew)}: loads down, ${count} of ${of} clear`,
  withdraw: (_, { entry, why }) => `Number ${entry} withdrawn${because(why)}`,
};

/** What of the doubt is switched on, by name. */
function doubtsOn(doubt: Doubt): string[] {
  return [...sourcesOfDoubt(doubt), ...conditionsUsed(doubt)]
    .filter(({ on }) => on)
    .map(({ name }) => name);
}

/** A load by its name, else by its id. */
export function loadLabel(state: Pick<BuildState, 'work'>, load: string): string {
  return state.work.loads.find(({ id }) => id === load)?.name ?? load;
}
