import type { LaunchRules } from '../kit/kit.ts';
import { balanceBehind, type Girder } from './balance.ts';
import type { Stage } from './bridge.ts';
import { tidy } from './way.ts';

/** The girder to push out, and how far. Metres ahead of the front rollers. */
export type Launch = {
  readonly girder: Girder;
  readonly bays: number;
  /** Where the tip meets the landing rollers. */
  readonly landsAt: number;
  /** Where the tip would be once bay 1 rests on the far bearing. */
  readonly final: number;
};

/** Tolerance on lengths, metres: sums of decimal lengths are not exact. */
const hair = 1e-9;

/**
 * The stages of a launch, found by rule from the balance of moments (see `balanceBehind`):
 *
 * 1. Bays are built in the kit's lots. After each lot the bridge moves by the length just built, so that the next lot
 *    is built in the same place, if the balance without any deck then keeps the kit's margin and the tip stays short of
 *    the far rollers; otherwise the next lot is built first.
 * 2. With all bays built the tip is brought to the far rollers, in equal moves no longer than the kit allows. Where
 *    the bare balance would be short of the margin, as few bays as will do are decked first, from the rear.
 * 3. Once landed, the nose comes off in the kit's lots: each move brings one lot past the far rollers, the last also
 *    brings the bridge to its bearing.
 *
 * Null when rule 2 cannot keep the margin with the bays the kit lets be decked early.
 */
export function launchStages(launch: Launch, rules: LaunchRules): Stage[] | null {
  const { girder, bays, landsAt } = launch;
  const stages: Stage[] = [];
  let tip = 0;
  let built = 0;
  while (built < bays) {
    const before = built;
    built = Math.min(bays, built + rules.lot);
    const metres = (built - before) * girder.bayLength;
    const balance = balanceBehind(girder, { tip: tip + metres, bays: built, decked: [] }) ?? 0;
    if (built < bays && balance >= rules.margin && tip + metres < landsAt - hair) {
      tip += metres;
      stages.push(stage(stages, { bays: built, decked: [], metres, tip, balance, lands: false }));
    }
  }

  const moves = Math.max(1, Math.ceil((landsAt - tip) / rules.longestMove - hair));
  const metres = (landsAt - tip) / moves;
  for (let move = 1; move <= moves; move += 1) {
    tip += metres;
    const held = decksThatHold(launch, rules, tip);
    if (held === null) {
      return null;
    }
    stages.push(stage(stages, { ...held, bays, metres, tip, lands: move === moves }));
  }
  return [...stages, ...movesOnceLanded(launch, rules, stages)];
}

/** The fewest rear bays to deck so that the margin is kept with the tip there, and the balance then; null if none. */
function decksThatHold(
  { girder, bays }: Launch,
  rules: LaunchRules,
  tip: number,
): { decked: number[]; balance: number } | null {
  for (let count = 0; count <= Math.min(rules.deckEarly, bays); count += 1) {
    const decked = Array.from({ length: count }, (_, at) => bays - count + 1 + at);
    const balance = balanceBehind(girder, { tip, bays, decked });
    if (balance !== null && balance >= rules.margin) {
      return { decked, balance };
    }
  }
  return null;
}

function movesOnceLanded(launch: Launch, rules: LaunchRules, landed: readonly Stage[]): Stage[] {
  const { girder, bays, final } = launch;
  const decked = landed.at(-1)?.decked ?? [];
  const sectionLength = girder.nose === 0 ? 0 : girder.noseLength / girder.nose;
  const stages: Stage[] = [];
  let tip = landed.at(-1)?.tip ?? 0;
  let off = 0;
  while (final - tip > hair) {
    const left = girder.nose - off;
    const lot = Math.min(rules.noseOff, left);
    const rest = final - tip;
    // The last lot goes with the rest of the way, unless that is more than one move may be.
    const metres =
      left <= rules.noseOff && rest <= rules.longestMove + hair
        ? rest
        : Math.min(lot > 0 ? lot * sectionLength : rest, rules.longestMove, rest);
    tip += metres;
    const past = tip - launch.landsAt;
    const clear = sectionLength === 0 ? 0 : Math.floor(past / sectionLength + hair);
    const until = Math.min(girder.nose, clear);
    const noseOff = Array.from({ length: Math.max(0, until - off) }, (_, at) => off + at + 1);
    off = Math.max(off, until);
    stages.push({
      ...stage([...landed, ...stages], { bays, decked, metres, tip, balance: null, lands: false }),
      noseOff,
    });
  }
  return stages;
}

type Move = Pick<Stage, 'bays' | 'decked' | 'metres' | 'tip' | 'balance' | 'lands'>;

/** Adds the running number and the metres moved in all, rounded to a tenth of a millimetre for people to read. */
function stage(before: readonly Stage[], move: Move): Stage {
  return {
    stage: before.length + 1,
    bays: move.bays,
    decked: move.decked,
    metres: tidy(move.metres),
    moved: tidy(move.tip),
    tip: tidy(move.tip),
    balance: move.balance === null ? null : tidy(move.balance),
    lands: move.lands,
    noseOff: [],
  };
}

/** How far the tail reaches behind the front rollers at the worst, before any move. Metres. */
export function tailRoom(girder: Girder, stages: readonly Stage[]): number {
  let moved = 0;
  let room = 0;
  for (const { bays, moved: after } of stages) {
    room = Math.max(room, girder.noseLength + bays * girder.bayLength - moved);
    moved = after;
  }
  return room;
}
