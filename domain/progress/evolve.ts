import { asks } from './command.ts';
import { type Entry, entryKinds } from './entry.ts';
import { addBreaches } from './fold/events.ts';
import { foldClear, foldOff } from './fold/foldClearance.ts';
import { foldAcknowledgment, foldHalt } from './fold/foldHalt.ts';
import { foldFailure, foldPass } from './fold/foldHolds.ts';
import { foldHurt, foldRelief, foldStrength } from './fold/foldPeople.ts';
import {
  foldLoadIn,
  foldLoadLate,
  foldNearMiss,
  foldShort,
  foldWater,
  foldWind,
} from './fold/foldSite.ts';
import { foldKeepOffStart, foldReopening, foldSettlement, foldWork } from './fold/foldTasks.ts';
import { foldWithdrawal } from './fold/foldWithdrawal.ts';
import { foldBridge, foldOpening, foldPlan } from './fold/foldWork.ts';
import { minutesBetween } from './instants.ts';
import { type BuildState, emptyBuild } from './state.ts';
import { type KnownEntry, knownEntry } from './upcast.ts';

/** Minutes in which the author of a tell may withdraw it. */
export const withdrawalMinutes = 10;

/**
 * The state after one more entry. Total and deterministic: an entry of a kind or version that this program does not
 * know only raises `number` and `unknown`; an entry that is already folded changes nothing. Parts that the entry does
 * not touch keep their reference.
 */
export function evolve(state: BuildState, entry: Entry): BuildState {
  if (entry.number <= state.number) return state;
  const counted = { ...state, number: entry.number };
  const known = knownEntry(entry);
  if (!known) return { ...counted, unknown: state.unknown + 1 };
  return keepTell(addBreaches(apply(counted, known), known), known);
}

/** The state after a record, or after the rest of one from a state on. */
export function fold(entries: readonly Entry[], from: BuildState = emptyBuild): BuildState {
  return entries.reduce(evolve, from);
}

function apply(state: BuildState, entry: KnownEntry): BuildState {
  switch (entry.kind) {
    case 'build-opened':
      return foldOpening(state, entry);
    case 'bridge-chosen':
      return foldBridge(state, entry);
    case 'plan-accepted':
      return foldPlan(state, entry);
    case 'keep-off-started':
      return foldKeepOffStart(state, entry);
    case 'hold-passed':
      return foldPass(state, entry);
    case 'hold-failed':
      return foldFailure(state, entry);
    case 'halt-called':
      return foldHalt(state, entry);
    case 'halt-acknowledged':
      return foldAcknowledgment(state, entry);
    case 'halt-lifted':
      return { ...state, halt: null };
    case 'task-reopened':
      return foldReopening(state, entry);
    case 'task-settled':
      return foldSettlement(state, entry);
    case 'confidence-set':
      return { ...state, confidence: entry.body.confidence };
    case 'asked-for-set':
      return { ...state, askedFor: entry.body.askedFor };
    case 'doubt-set':
      return { ...state, doubt: entry.body.doubt };
    case 'task-started':
    case 'task-finished':
    case 'task-stopped':
    case 'task-resumed':
    case 'task-part-done':
      return foldWork(state, entry);
    case 'strength-told':
      return foldStrength(state, entry);
    case 'off-told':
      return foldOff(state, entry);
    case 'clear-told':
      return foldClear(state, entry);
    case 'load-came':
      return foldLoadIn(state, entry);
    case 'load-late':
      return foldLoadLate(state, entry);
    case 'part-short':
      return foldShort(state, entry);
    case 'person-hurt':
      return foldHurt(state, entry);
    case 'near-miss-told':
      return foldNearMiss(state, entry);
    case 'water-told':
      return foldWater(state, entry);
    case 'wind-told':
      return foldWind(state, entry);
    case 'crew-relieved':
      return foldRelief(state, entry);
    case 'tell-withdrawn':
      return foldWithdrawal(state, entry);
    default:
      return entry satisfies never;
  }
}

/** Kinds that stay in the record whatever anyone says later: decisions, halts, near misses, withdrawals themselves. */
const lasting: ReadonlySet<string> = new Set([
  ...Object.keys(asks).map((kind) => entryKinds[kind as keyof typeof asks]),
  entryKinds.halt,
  entryKinds['tell-near-miss'],
  entryKinds.withdraw,
]);

/** Keeps the tells that their authors may still withdraw, and forgets the older ones. */
function keepTell(state: BuildState, entry: KnownEntry): BuildState {
  if (lasting.has(entry.kind)) return state;
  const { number, kind, by, saidBy, receivedAt, body } = entry;
  const recent = state.tells.filter(
    (tell) => minutesBetween(tell.receivedAt, receivedAt) <= withdrawalMinutes,
  );
  const told = { entry: number, kind, by, saidBy: saidBy ?? null, receivedAt, body };
  return { ...state, tells: [...recent, told] };
}
