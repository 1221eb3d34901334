import { gravity } from './centreOfGravity.ts';

/** Where the bridge rests. `tail` is the vehicle or packing under its rear end. */
export type Bearer = {
  readonly of: 'landing' | 'front' | 'rear' | 'tail';
  /** Metres ahead of the front rollers. */
  readonly at: number;
};

/** A bearer and what it carries, newtons; less than 0 has to be held down. */
export type Reaction = Bearer & { readonly newtons: number };

/** Rollers of a site. Metres. */
export type Rollers = {
  /** Further rollers behind the front ones, metres back from them. */
  readonly behind: readonly number[];
  /** Landing rollers, ahead of the front ones. */
  readonly landsAt: number;
};

/**
 * The two bearers that carry a stiff bridge whose centre of gravity is at `centre` and its tail at `tail` (metres
 * ahead of the front rollers): the neighbours on either side of the centre among landing rollers (once the tip has
 * landed), front rollers, the rearmost of the other rollers still under the bridge, and the tail itself. With the
 * centre ahead of the front rollers and the tip in the air the rear one has to hold the bridge down.
 */
export function bearersUnder(
  { centre, tail, landed }: { centre: number; tail: number; landed: boolean },
  rollers: Rollers,
): readonly [ahead: Bearer, behind: Bearer] {
  const front: Bearer = { of: 'front', at: 0 };
  const end: Bearer = { of: 'tail', at: tail };
  const under = rollers.behind.filter((metres) => -metres > tail);
  const rear: Bearer = under.length > 0 ? { of: 'rear', at: -Math.max(...under) } : end;
  if (centre > 0 && landed) {
    return [{ of: 'landing', at: rollers.landsAt }, front];
  }
  return centre < rear.at && rear !== end ? [rear, end] : [front, rear];
}

/** What two bearers carry of so many kilograms, by the lever: forces add up to the weight and moments close. */
export function reactionsOn(
  [ahead, behind]: readonly [Bearer, Bearer],
  kilograms: number,
  centre: number,
): readonly [Reaction, Reaction] {
  const weight = kilograms * gravity;
  const span = ahead.at - behind.at;
  const share = span === 0 ? 1 : (centre - behind.at) / span;
  return [
    { ...ahead, newtons: weight * share },
    { ...behind, newtons: weight * (1 - share) },
  ];
}
