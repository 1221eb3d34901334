import type { Work, Zone } from '#domain/tasks/work.ts';

/** The zones that the order of work closes while the bridge makes the move of a stage. */
export function closedZones(work: Work, stage: number): Zone[] {
  const ids = new Set(
    work.tasks
      .filter(({ effect }) => effect?.kind === 'move' && effect.stage === stage)
      .flatMap(({ zones }) => zones),
  );
  return work.zones.filter(({ id }) => ids.has(id));
}

/** Whether one of them lies on the far bank. */
export function closesFarBank(work: Work, stage: number): boolean {
  return closedZones(work, stage).some(({ bank }) => bank === 'far');
}
