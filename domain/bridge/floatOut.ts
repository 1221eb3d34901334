import type { Stage } from './bridge.ts';
import { tidy } from './way.ts';

/**
 * The stages of a floating bridge boomed out from the near bank: bays are joined in lots and each lot is pushed out by
 * its own length, the last only as far as the far bearing. It floats, so there is no balance to keep. `final` and
 * `landsAt` are metres of tip ahead of the near bearing line.
 */
export function floatStages(out: {
  readonly bays: number;
  readonly bayLength: number;
  readonly lot: number;
  readonly landsAt: number;
  readonly final: number;
}): Stage[] {
  const stages: Stage[] = [];
  let tip = 0;
  let landed = false;
  for (let bays = 0; bays < out.bays; ) {
    const before = bays;
    bays = Math.min(out.bays, bays + out.lot);
    const next = Math.min(out.final, tip + (bays - before) * out.bayLength);
    const lands: boolean = !landed && next >= out.landsAt;
    landed = landed || lands;
    stages.push({
      stage: stages.length + 1,
      bays,
      decked: [],
      metres: tidy(next - tip),
      moved: tidy(next),
      tip: tidy(next),
      balance: null,
      lands,
      noseOff: [],
    });
    tip = next;
  }
  return stages;
}
