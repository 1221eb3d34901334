import { greatestWithin } from './greatestWithin.ts';
import { momentRatio } from './momentRatio.ts';
import { type Placed, placeAt, sagAt, type Weighed } from './place.ts';
import { type Reaction, type Rollers, reactionsOn } from './reactions.ts';
import type { Stiffness } from './tipSag.ts';

/** One move of a body: from where to where its tip goes, metres ahead of the front rollers. */
export type Move = {
  readonly from: number;
  readonly to: number;
  /** Whether the tip rests on the landing rollers already. */
  readonly landed: boolean;
};

/** Something greatest or least during a move, and how many metres into it. */
type Worst = { readonly metres: number; readonly into: number };

/** What a move does, over all of it and not only at its ends. Metres and newtons. */
export type MoveStatics = {
  readonly start: Placed;
  /** At the end; where the tip lands, just before the far rollers take weight. */
  readonly end: Placed;
  /** Least distance of the centre of gravity from tipping. */
  readonly margin: Worst;
  /** Holding over tipping moment about the roller it would tip over, there; null while nothing is ahead of it. */
  readonly ratio: number | null;
  /** The most that each bearer carries, and how many metres into the move. */
  readonly most: readonly (Reaction & { readonly into: number })[];
  /** Most that hangs ahead of the foremost rollers that carry. */
  readonly overhang: number;
  /** Most sag of the tip in the air; null where it is landed or the kit gives no stiffness. */
  readonly sag: Worst | null;
};

/**
 * The statics of a move, exact over all of it. While the bridge rests on the same two bearers the centre of gravity
 * goes along at the pace of the bridge, what a roller carries is linear in the way gone, and what the tail carries is
 * monotone in it, so that margin and reactions are greatest or least where bearers change or the move ends. The sag
 * is smooth between the points where a joint or a bearer passes another; a greatest one inside is closed in on.
 */
export function moveStatics(
  body: Weighed,
  move: Move,
  rollers: Rollers,
  stiffness: Stiffness | null,
): MoveStatics {
  const way = move.to - move.from;
  const at = (into: number) => placeAt(body, move.from + into, move.landed, rollers);
  const end = at(way);
  const over = move.landed ? rollers.landsAt : 0;
  return {
    start: at(0),
    end,
    // The centre goes ahead with the bridge.
    margin: { metres: end.margin, into: way },
    ratio: momentRatio(body.runs, move.to, over),
    most: mostReactions(body, move, rollers),
    overhang: Math.max(0, move.to - body.front - over),
    sag: greatestSag(body, move, rollers, stiffness),
  };
}

function mostReactions(body: Weighed, move: Move, rollers: Rollers): MoveStatics['most'] {
  const most = new Map<string, Reaction & { readonly into: number }>();
  const note = (reactions: readonly Reaction[], into: number) => {
    for (const reaction of reactions) {
      const key = reaction.of === 'rear' ? `rear ${reaction.at}` : reaction.of;
      if (reaction.newtons > (most.get(key)?.newtons ?? Number.NEGATIVE_INFINITY)) {
        most.set(key, { ...reaction, into });
      }
    }
  };
  const at = (into: number) => placeAt(body, move.from + into, move.landed, rollers);
  // Where bearers change just as the move begins or ends, both sides of the change count.
  for (const into of [0, move.to - move.from]) {
    note(at(into).reactions, into);
  }
  for (const [from, to] of pieces(move, bearerChanges(body, rollers))) {
    // Bearers of this piece are those in its middle; at its ends they change.
    const [ahead, behind] = at((from + to) / 2).reactions;
    for (const into of [from, to]) {
      const tip = move.from + into;
      const here = ({ of, at }: Reaction) => ({ of, at: of === 'tail' ? tip - body.length : at });
      const bearers = [here(ahead), here(behind)] as const;
      note(reactionsOn(bearers, body.kilograms, tip - body.behindTip), into);
    }
  }
  return [...most.values()];
}

function greatestSag(
  body: Weighed,
  move: Move,
  rollers: Rollers,
  stiffness: Stiffness | null,
): Worst | null {
  if (!stiffness || move.landed) {
    return null;
  }
  const sag = (into: number) => {
    const tip = move.from + into;
    return sagAt(body, tip, placeAt(body, tip, move.landed, rollers), stiffness) ?? 0;
  };
  const joints = body.runs.flatMap(({ from, to }) => [from, to]);
  const passes = [0, ...rollers.behind].flatMap((back) => joints.map((joint) => joint - back));
  const breaks = [...bearerChanges(body, rollers), ...passes];
  let worst: Worst = { metres: sag(0), into: 0 };
  for (const [from, to] of pieces(move, breaks)) {
    const found = greatestWithin(sag, from, to);
    if (found.value > worst.metres) {
      worst = { metres: found.value, into: found.at };
    }
  }
  return worst;
}

/** Where the tip stands, ahead of the front rollers, when the tail or the centre passes a roller. */
function bearerChanges(body: Weighed, { behind }: Rollers): number[] {
  return [0, ...behind].flatMap((back) => [body.length - back, body.behindTip - back]);
}

/** The move cut wherever the tip stands at one of `tips`, as metres into it. */
function pieces({ from, to }: Move, tips: readonly number[]): [number, number][] {
  const inside = tips.filter((tip) => tip > from && tip < to).map((tip) => tip - from);
  const cuts = [0, ...new Set(inside.sort((a, b) => a - b)), to - from];
  return cuts.slice(1).map((cut, at) => [cuts[at] ?? 0, cut]);
}
