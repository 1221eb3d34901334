import type { Bridge } from '../../bridge/bridge.ts';
import { bayWords } from './loads.ts';
import type { Repetition } from './repetition.ts';

/**
 * Puts what a repetition is about into a text with placeholders (see `domain/kit/order.ts`). A placeholder that the
 * repetition has nothing for stays as it is written, so that the fault shows where the text is used.
 */
export function fill(text: string, repetition: Repetition, bridge: Bridge): string {
  return text.replaceAll(/\{([a-z-]+)\}/g, (written, word: string) => {
    return wordFor(word, repetition, bridge) ?? written;
  });
}

function wordFor(word: string, repetition: Repetition, bridge: Bridge): string | null {
  const stage = bridge.stages.find((one) => one.stage === repetition.stage);
  switch (word) {
    case 'bay':
      return textOf(repetition.bays?.length === 1 ? repetition.bays[0] : undefined);
    case 'bays':
      return repetition.bays?.length ? bayWords(repetition.bays) : null;
    case 'lot':
      return textOf(repetition.lot);
    case 'section':
      return textOf(repetition.sections?.length === 1 ? repetition.sections[0] : undefined);
    case 'stage':
      return textOf(repetition.stage);
    case 'metres':
      return textOf(stage && Math.round(stage.metres * 10) / 10);
    case 'landing':
      return stage ? (stage.lands ? ', tip lands' : '') : null;
    case 'side':
      return repetition.side;
    case 'bank':
      return repetition.bank;
    case 'load':
      return textOf(repetition.load?.number);
    default:
      return null;
  }
}

function textOf(value: number | null | undefined): string | null {
  return value === null || value === undefined ? null : String(value);
}
