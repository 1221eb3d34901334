import { type Refusal, refusal } from '../refusal.ts';
import { bad, good, type Result } from '../result.ts';
import type { Command } from './command.ts';
import { type Breach, type Consequence, entryKinds, type NewEntry } from './entry.ts';
import { orderIndex } from './orderIndex.ts';
import { breachesOf } from './rules/breaches.ts';
import { refuseDoubt } from './rules/doubt.ts';
import { refuseForm } from './rules/form.ts';
import { consequenceOfHalt, decideLift } from './rules/halt.ts';
import { decideFailure, decidePass } from './rules/holds.ts';
import { refuseIdentity } from './rules/identity.ts';
import { decideKeepOffStart } from './rules/keepOffStart.ts';
import { lapsedByRelief, lapsedByWind, lapsedByWork } from './rules/lapses.ts';
import { decideBridge, decideOpening, decidePlan } from './rules/plans.ts';
import { decideReopening } from './rules/redo.ts';
import { refuseRole } from './rules/roles.ts';
import { decideWithdrawal } from './rules/withdrawal.ts';
import type { BuildState } from './state.ts';
import { presentVersion } from './upcast.ts';
import { taskLabel } from './words.ts';

type Found = { readonly breaches?: Breach[]; readonly consequence?: Consequence };

/**
 * What a command leaves in the record, or why it leaves nothing. Asks are refused when a rule stands against them.
 * Tells are facts: refused only for role, identity or form; one that breaks a rule is kept with its breaches.
 * `happenedAt` is never later than `receivedAt` in the entry. Pure: the command brings time and id.
 */
export function decide(state: BuildState, command: Command): Result<NewEntry[], Refusal> {
  const refused =
    refuseUnopened(state, command) ??
    refuseRole(command.kind, command.by.role) ??
    refuseForm(command) ??
    refuseIdentity(state, command);
  if (refused) return bad(refused);
  const happenedAt =
    Date.parse(command.happenedAt) > Date.parse(command.receivedAt)
      ? command.receivedAt
      : command.happenedAt;
  const found = judge(state, command, happenedAt);
  return found.ok ? good([entryOf(command, happenedAt, found.value)]) : found;
}

function refuseUnopened(state: BuildState, { kind }: Command): Refusal | null {
  if (state.number > 0 || kind === 'open-build') return null;
  return refusal('build-unknown', 'There is no such build: open it first.');
}

function judge(state: BuildState, command: Command, happenedAt: string): Result<Found, Refusal> {
  switch (command.kind) {
    case 'open-build':
      return caused(decideOpening(state, command.body));
    case 'choose-bridge':
      return caused(decideBridge(state, command.body));
    case 'accept-plan':
      return caused(decidePlan(state, command.body));
    case 'start-keep-off':
      return caused(decideKeepOffStart(state, command.body.task, happenedAt));
    case 'pass-hold':
      return caused(decidePass(state, command, happenedAt));
    case 'fail-hold':
      return caused(decideFailure(state, command.body.task));
    case 'lift-halt':
      return caused(decideLift(state, happenedAt));
    case 'reopen-task':
      return caused(decideReopening(state, command.body));
    case 'settle-task':
      return settle(state, command.body);
    case 'withdraw':
      return caused(decideWithdrawal(state, command));
    case 'halt':
      return good({ consequence: consequenceOfHalt(state) });
    case 'tell-finished':
      if (orderIndex(state.work).task.get(command.body.task)?.hold)
        return bad(needsInspection(state, command.body.task));
      return work(state, command, happenedAt, true);
    case 'tell-started':
    case 'tell-resumed':
      return work(state, command, happenedAt, false);
    case 'tell-part':
    case 'tell-stopped':
      return good({ breaches: breachesOf(state, command, happenedAt) });
    case 'tell-off':
    case 'tell-clear':
      return clearance(state, command.body.task);
    case 'tell-wind':
      return good(lapsing(lapsedByWind(state, command.body.speed)));
    case 'tell-relief':
      return good(lapsing(lapsedByRelief(state, command.body.crew)));
    case 'set-doubt': {
      const refused = refuseDoubt(state, command.body.doubt);
      return refused ? bad(refused) : good({});
    }
    case 'set-confidence':
    case 'set-asked-for':
    case 'tell-strength':
    case 'tell-load-in':
    case 'tell-load-late':
    case 'tell-short':
    case 'tell-hurt':
    case 'tell-near-miss':
    case 'tell-water':
    case 'acknowledge-halt':
      return good({});
    default:
      return command satisfies never;
  }
}

function caused(result: Result<Consequence, Refusal>): Result<Found, Refusal> {
  return result.ok ? good({ consequence: result.value }) : result;
}

function lapsing(lapsed: string[]): Found {
  return lapsed.length > 0 ? { consequence: { lapsed } } : {};
}

function work(
  state: BuildState,
  command: Extract<Command, { kind: 'tell-started' | 'tell-resumed' | 'tell-finished' }>,
  happenedAt: string,
  finishes: boolean,
): Result<Found, Refusal> {
  const breaches = breachesOf(state, command, happenedAt);
  return good({ breaches, ...lapsing(lapsedByWork(state, command.body.task, finishes)) });
}

function needsInspection(state: BuildState, task: string): Refusal {
  const sentence = `${taskLabel(state, task)} is a hold point: call the inspector, a tick does not pass it.`;
  return refusal('hold-needs-inspection', sentence, [task]);
}

function clearance(state: BuildState, task: string): Result<Found, Refusal> {
  if (orderIndex(state.work).task.get(task)?.keepOff) return good({});
  const sentence = `${taskLabel(state, task)} is no keep-off task: choose the one that is to start.`;
  return bad(refusal('not-keep-off', sentence, [task]));
}

function settle(
  state: BuildState,
  { task, status }: { task: string; status: 'done' | 'stopped' },
): Result<Found, Refusal> {
  if (!state.tasks[task]?.disputed) {
    const sentence = `Nobody contradicts anybody about ${taskLabel(state, task)}: nothing to settle.`;
    return bad(refusal('nothing-to-settle', sentence, [task]));
  }
  return good(status === 'done' ? lapsing(lapsedByWork(state, task, true)) : {});
}

/** The entry as it goes into the record; absent things are left out, so that it stays plain JSON. */
function entryOf(command: Command, happenedAt: string, { breaches, consequence }: Found): NewEntry {
  const { id, by, saidBy, receivedAt, body } = command;
  const kind = entryKinds[command.kind];
  const { role, name, crew } = by;
  return {
    id,
    kind,
    version: presentVersion(kind),
    by: { role, name, ...(crew === undefined ? {} : { crew }) },
    ...(saidBy === undefined ? {} : { saidBy }),
    happenedAt,
    receivedAt,
    body,
    ...(breaches && breaches.length > 0 ? { breaches } : {}),
    ...(consequence && Object.keys(consequence).length > 0 ? { consequence } : {}),
  };
}
