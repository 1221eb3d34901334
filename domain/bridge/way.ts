import type { Girder } from './balance.ts';
import type { Stage } from './bridge.ts';

/** Why a bridge cannot be: one sentence with what would free it, and the fields concerned. */
export type Limit = { readonly sentence: string; readonly of: readonly string[] };

/** How a bridge gets over the gap. Metres. `stages` is empty where it cannot. */
export type Way = {
  readonly girder: Girder;
  readonly stages: readonly Stage[];
  /** Where the tip meets the far side, ahead of the front rollers or the near bearing line. */
  readonly landsAt: number;
  /** Firm ground needed behind that. */
  readonly room: number;
  readonly limits: readonly Limit[];
};

/** Metres in a sentence, to a tenth. */
export function metres(length: number): string {
  return `${length.toFixed(1)} m`;
}

/** Removes the dust that sums of decimal lengths leave; a tenth of a millimetre is finer than anybody measures. */
export function tidy(length: number): number {
  return Math.round(length * 1e4) / 1e4;
}
