import type { Task } from '../../tasks/task.ts';
import { orderIndex } from '../orderIndex.ts';
import { expectedCrews, mayWorkAt, peopleFrom } from '../plannedCrews.ts';
import { everythingBefore } from '../rules/before.ts';
import { isOnSite } from '../rules/halt.ts';
import { isAtWork } from '../standing.ts';
import type { BuildState } from '../state.ts';
import { crewLabel, inWords, taskLabel, zoneLabel } from '../words.ts';

/** One condition of starting a keep-off task. `of` is the task, hold, zone, crew or bank concerned. */
export type KeepOffCondition = {
  readonly label: string;
  readonly met: boolean;
  /** What is so, or what to do. */
  readonly sentence: string;
  readonly kind: 'order' | 'hold' | 'zone' | 'off' | 'clear' | 'halt';
  readonly of: string;
};

/**
 * Every condition of starting a keep-off task, met or not: no halt; everything before it done and its holds passed;
 * nobody at work in its zones; the crews concerned off, with their count; seen clear on each bank by name.
 * With `at` (ISO 8601 UTC) waits are looked at too, and crews whose hours are not then are not asked.
 * Met conditions are no clearance: the people on the banks give that.
 */
export function keepOffCheck(state: BuildState, taskId: string, at?: string): KeepOffCondition[] {
  const task = orderIndex(state.work).task.get(taskId);
  if (!task) return [];
  return [
    haltCondition(state),
    ...orderConditions(state, taskId, at),
    ...task.zones.map((zone) => zoneCondition(state, task, zone)),
    ...concernedCrews(state, task, at).map((crew) => offCondition(state, task, crew)),
    bankCondition(state, task, 'near'),
    bankCondition(state, task, 'far'),
  ];
}

function haltCondition({ halt }: BuildState): KeepOffCondition {
  const sentence = halt ? 'A halt is on: wait until the leader has lifted it.' : 'No halt is on.';
  return { kind: 'halt', of: '', label: 'No halt', met: halt === null, sentence };
}

function orderConditions(
  state: BuildState,
  task: string,
  at: string | undefined,
): KeepOffCondition[] {
  const conditions = everythingBefore(state, task, at).map(({ kind, of, met, sentence }) => ({
    kind: kind === 'hold' ? ('hold' as const) : ('order' as const),
    of,
    label: taskLabel(state, of),
    met,
    sentence,
  }));
  return conditions.toSorted((a, b) => Number(a.kind === 'hold') - Number(b.kind === 'hold'));
}

function zoneCondition(state: BuildState, task: Task, zone: string): KeepOffCondition {
  const name = zoneLabel(state, zone);
  const inIt = state.work.tasks.filter(({ id, zones }) => {
    const standing = state.tasks[id];
    return id !== task.id && zones.includes(zone) && standing && isAtWork(standing);
  });
  const sentence =
    inIt.length === 0
      ? `Nobody else is told at work in ${name}.`
      : inIt
          .map(({ id }) => `${atWorkInWords(state, id)} in ${name}: stop or finish it.`)
          .join(' ');
  return { kind: 'zone', of: zone, label: `${name} empty`, met: inIt.length === 0, sentence };
}

/** "Bay 3 left (14) is at work by Left girder". */
function atWorkInWords(state: BuildState, id: string): string {
  const crews = state.tasks[id]!.shares.filter(({ status }) => status === 'at-work');
  const names = inWords(crews.map(({ crew }) => crewLabel(state, crew)));
  return `${taskLabel(state, id)} is at work${names ? ` by ${names}` : ''}`;
}

/**
 * Crews that must be told off: those that take part, those that told work in its zones, and those that may yet work
 * there; none without people, and none whose people all take part.
 */
function concernedCrews(state: BuildState, task: Task, at: string | undefined): string[] {
  const inZones = state.work.tasks.filter(
    ({ id, zones }) => id !== task.id && zones.some((zone) => task.zones.includes(zone)),
  );
  const { named } = expectedCrews(state.plan, task);
  return Object.keys(state.crews).filter((crew) => {
    if (mustBeOff(state, task, crew) <= 0) return false;
    const told = inZones.some(({ id }) =>
      state.tasks[id]?.tells.some((tell) => tell.crew === crew),
    );
    if (told || named.includes(crew)) return true;
    if (at !== undefined && !isOnSite(state, crew, at)) return false;
    return inZones.some(
      (other) => state.tasks[other.id]?.status !== 'done' && mayWorkAt(state, other, crew),
    );
  });
}

/** People of a crew that are fit and take no part in the task. */
function mustBeOff(state: BuildState, task: Task, crew: string): number {
  return (state.crews[crew]?.fit ?? 0) - ownPeople(state, task, crew);
}

function ownPeople(state: BuildState, task: Task, crew: string): number {
  const { named } = expectedCrews(state.plan, task);
  return named.includes(crew) ? peopleFrom(state.plan, task, crew) : 0;
}

function offCondition(state: BuildState, task: Task, crew: string): KeepOffCondition {
  const name = crewLabel(state, crew);
  const needed = mustBeOff(state, task, crew);
  const fit = state.crews[crew]!.fit;
  const told = state.clearances[task.id]?.off[crew];
  const met =
    told !== undefined && told.off >= needed && told.of - told.off <= ownPeople(state, task, crew);
  const counted = told ? `${name} told off ${told.off} of ${told.of}` : '';
  const sentence = met
    ? `${counted}.`
    : told
      ? `${counted}: get ${needed} of ${fit} off and tell it again.`
      : `${name} has not told off: get ${needed} of ${fit} off and tell it.`;
  return { kind: 'off', of: crew, label: `${name} off`, met, sentence };
}

function bankCondition(state: BuildState, task: Task, bank: 'near' | 'far'): KeepOffCondition {
  const seen = state.clearances[task.id]?.clear[bank];
  const sentence = seen
    ? `${seen.name} sees it clear from the ${bank} bank, ${seen.people} people counted.`
    : `Have a named person on the ${bank} bank see the zones clear and count heads.`;
  const label = `Seen clear from the ${bank} bank`;
  return { kind: 'clear', of: bank, label, met: seen !== undefined, sentence };
}
