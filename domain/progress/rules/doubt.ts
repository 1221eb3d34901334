import type { Doubt } from '../../forecast/doubt/doubt.ts';
import { usualDoubt } from '../../forecast/doubt/usualDoubt.ts';
import { type Refusal, refusal } from '../../refusal.ts';
import { orderIndex } from '../orderIndex.ts';
import type { BuildState } from '../state.ts';

/**
 * Refuses a doubt that cannot be meant: two events of one id, a delay out of order, an event of the leader's own about
 * what this build does not have. The usual events cover what there is, whatever they name.
 */
export function refuseDoubt({ work }: BuildState, { events }: Doubt): Refusal | null {
  const usual = new Set(usualDoubt(work).events.map(({ id }) => id));
  const loads = new Set(work.loads.map(({ id }) => id));
  const { task: tasks } = orderIndex(work);
  const seen = new Set<string>();
  for (const event of events) {
    const { id, name } = event;
    if (seen.has(id)) {
      const sentence = `Two events have the id ${id}: give each an id of its own.`;
      return refusal('form-wrong', sentence, [id]);
    }
    seen.add(id);
    if (event.kind !== 'hold-fails') {
      const { quick, likely, slow } = event.delay;
      if (quick > likely || likely > slow) {
        const sentence = `The delay of "${name}" is out of order: quick, likely, slow must not fall.`;
        return refusal('form-wrong', sentence, [id]);
      }
    }
    if (usual.has(id)) continue;
    if (event.kind === 'late-load') {
      const unknown = event.loads.find((load) => !loads.has(load));
      if (unknown === undefined) continue;
      const sentence = `"${name}" names the load ${unknown}, which this build does not have: check its id.`;
      return refusal('load-unknown', sentence, [unknown]);
    }
    const unknown = event.tasks.find((task) => !tasks.has(task));
    if (unknown === undefined) continue;
    const sentence = `"${name}" names the task ${unknown}, which this build does not have: check its id.`;
    return refusal('task-unknown', sentence, [unknown]);
  }
  return null;
}
