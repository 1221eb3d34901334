import { orderIndex } from '../orderIndex.ts';
import { peopleFrom } from '../plannedCrews.ts';
import { isAtWork } from '../standing.ts';
import type { BuildState } from '../state.ts';

/** Who should be in a zone by what was told: people of the tasks at work there, and the keep-off task that closes it. */
export type ZoneNow = {
  readonly zone: string;
  readonly people: number;
  readonly tasks: readonly string[];
  readonly closedBy: string | null;
};

/** Every zone of the site as told, in the order of the work's zones. Told is not seen: it clears nobody. */
export function zonesNow(state: BuildState): ZoneNow[] {
  const index = orderIndex(state.work);
  const going = state.work.tasks.filter(({ id }) => {
    const standing = state.tasks[id];
    return standing !== undefined && isAtWork(standing);
  });
  return state.work.zones.map(({ id: zone }) => {
    const here = going.filter(({ zones }) => zones.includes(zone));
    const people = here.reduce((sum, { id }) => sum + peopleAt(state, id), 0);
    const closedBy = here.find(({ id }) => index.task.get(id)?.keepOff)?.id ?? null;
    return { zone, people, tasks: here.map(({ id }) => id), closedBy };
  });
}

function peopleAt(state: BuildState, id: string): number {
  const task = orderIndex(state.work).task.get(id)!;
  const shares = state.tasks[id]?.shares ?? [];
  return shares
    .filter(({ status }) => status === 'at-work')
    .reduce((sum, { crew }) => sum + peopleFrom(state.plan, task, crew), 0);
}
