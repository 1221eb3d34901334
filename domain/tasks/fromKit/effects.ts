import type { Bridge } from '../../bridge/bridge.ts';
import type { TaskTemplate } from '../../kit/order.ts';
import type { Effect, Place } from '../effect.ts';
import type { Repetition } from './repetition.ts';

/** What a finished task adds to the drawing; null when the repetition lacks what the effect is about. */
export function effectOf(
  kind: NonNullable<TaskTemplate['effect']>,
  repetition: Repetition,
  bridge: Bridge,
): Effect | null {
  const { bank, side } = repetition;
  const bays = [...(repetition.bays ?? [])];
  const sections = [...(repetition.sections ?? [])];
  const [bay] = bays;
  const [section] = sections;
  const sided = side ? { side } : {};
  switch (kind) {
    case 'nose':
      return section === undefined ? null : { kind, section, ...sided };
    case 'bay':
      return bay === undefined ? null : { kind, bay, ...sided };
    case 'brace':
      return bay === undefined ? null : { kind, bay };
    case 'move': {
      const stage = bridge.stages.find((one) => one.stage === repetition.stage);
      return stage ? { kind, stage: stage.stage, metres: stage.metres, lands: stage.lands } : null;
    }
    case 'deck':
    case 'kerb':
      return bay === undefined ? null : { kind, bays };
    case 'nose-off':
      return section === undefined ? null : { kind, sections };
    case 'seated':
    case 'ramp':
    case 'approach':
      return bank ? { kind, bank } : null;
  }
}

/** Where a repetition is done. */
export function placeOf(template: TaskTemplate, repetition: Repetition): Place {
  const { bays, side, bank } = repetition;
  // A stage or a load has bays, but its work is not done on them.
  const onBays = template.repeat?.by === 'bay' || template.repeat?.by === 'lot';
  return {
    part: template.place,
    ...(onBays && bays ? { bays: [...bays] } : {}),
    ...(side ? { side } : {}),
    ...(bank ? { bank } : {}),
  };
}
