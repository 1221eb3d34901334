import type { Doubt } from '../../forecast/doubt/doubt.ts';
import type { DoubtEvent } from '../../forecast/doubt/events.ts';
import { usualDoubt } from '../../forecast/doubt/usualDoubt.ts';
import type { BuildState } from '../state.ts';

/**
 * The doubt that forecasts are made with: what the leader set, else the usual one. The usual events (by their ids)
 * always cover what the present order of work has of their kind: a task that a new plan brings is in doubt like the rest.
 */
export function doubtInForce({ doubt, work }: Pick<BuildState, 'doubt' | 'work'>): Doubt {
  const usual = usualDoubt(work);
  if (!doubt) return usual;
  const covering = new Map(usual.events.map((event) => [event.id, event]));
  return { ...doubt, events: doubt.events.map((event) => covered(event, covering.get(event.id))) };
}

function covered(event: DoubtEvent, usual: DoubtEvent | undefined): DoubtEvent {
  if (event.kind === 'late-load') {
    return usual?.kind === 'late-load' ? { ...event, loads: usual.loads } : event;
  }
  return usual && usual.kind === event.kind ? { ...event, tasks: usual.tasks } : event;
}
