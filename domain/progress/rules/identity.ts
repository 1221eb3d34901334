import { type Refusal, refusal } from '../../refusal.ts';
import type { Command } from '../command.ts';
import { orderIndex } from '../orderIndex.ts';
import { expectedCrews } from '../plannedCrews.ts';
import type { BuildState } from '../state.ts';
import { crewLabel, taskLabel } from '../words.ts';

/** Refuses what names a task, crew or load that this build does not have, and a chief who speaks for another crew. */
export function refuseIdentity(state: BuildState, command: Command): Refusal | null {
  const body = command.body as { task?: string; crew?: string; load?: string };
  const { task, crew, load } = body;
  if (task !== undefined && !orderIndex(state.work).task.has(task))
    return refusal('task-unknown', `There is no task ${task} in this build: check its id.`, [task]);
  if (crew !== undefined && !isCrew(state, crew))
    return refusal('crew-unknown', `There is no crew ${crew} in this build: check its id.`, [crew]);
  if (load !== undefined && !state.loads[load])
    return refusal('load-unknown', `There is no load ${load} in this build: check its id.`, [load]);
  if (command.by.role !== 'chief') return null;
  if (crew !== undefined && crew !== command.by.crew)
    return refusal(
      'not-your-crew',
      `You speak for ${ownCrew(state, command.by.crew)}: let ${crewLabel(state, crew)} tell it, or the log keeper.`,
      [crew],
    );
  return command.kind === 'start-keep-off'
    ? refuseOthersTask(state, command.body.task, command.by.crew)
    : null;
}

// A table of tasks may come without crews: then whoever tells is a crew.
function isCrew(state: BuildState, crew: string): boolean {
  return state.work.crews.length === 0 || state.work.crews.some(({ id }) => id === crew);
}

function ownCrew(state: BuildState, crew: string | undefined): string {
  return crew === undefined ? 'no crew' : crewLabel(state, crew);
}

function refuseOthersTask(state: BuildState, id: string, crew: string | undefined): Refusal | null {
  const task = orderIndex(state.work).task.get(id)!;
  const { named } = expectedCrews(state.plan, task);
  if (named.length === 0 || (crew !== undefined && named.includes(crew))) return null;
  const crews = named.map((each) => crewLabel(state, each)).join(', ');
  const sentence = `${taskLabel(state, id)} is for ${crews}: let its chief, the log keeper or the leader ask for it.`;
  return refusal('not-your-crew', sentence, [...named]);
}
