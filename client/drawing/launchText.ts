import type { Bridge } from '#domain/bridge/bridge.ts';
import type { Reaction } from '#domain/bridge/statics/reactions.ts';
import type { StageStatics } from '#domain/bridge/statics/stageStatics.ts';
import type { Kit } from '#domain/kit/kit.ts';
import { listed, numbersShort } from '../words/lists.ts';
import { kilonewtons, metres, tonnes } from '../words/units.ts';
import { words } from '../words/words.ts';

const said = words.launch;

/** "bay 9", "bays 9 to 11" */
export function bayWords(bays: readonly number[]): string {
  const numbers = numbersShort(bays);
  return bays.length === 1 ? said.bay(numbers) : said.bays(numbers);
}

/** "Build bays 9 to 11, deck bays 8 to 11, then move 8.0 m, the tip lands" */
export function stageDoes(bridge: Bridge, stage: StageStatics): string {
  const before = bridge.stages[stage.stage - 2];
  const built = Array.from(
    { length: stage.bays - (before?.bays ?? 0) },
    (_, at) => (before?.bays ?? 0) + at + 1,
  );
  const decked = stage.decked.filter((bay) => !before?.decked.includes(bay));
  const nose = before === undefined && bridge.nose > 0 ? said.addNose(bridge.nose) : null;
  const bays = built.length > 0 ? bayWords(built) : null;
  const adds = [
    ...(nose && bays ? [said.addNoseBays(nose, bays)] : bays ? [said.addBays(bays)] : []),
    ...(decked.length > 0 ? [said.addDeck(bayWords(decked))] : []),
    ...(stage.counterweight > 0 && !before?.counterweight
      ? [said.addWeights(tonnes(stage.counterweight))]
      : []),
  ];
  const move = stage.lands ? `${metres(stage.metres)}, ${said.lands}` : metres(stage.metres);
  if (adds.length === 0) return said.doesOnly(move);
  const text = said.does(listed(adds), move);
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Where the centre of gravity stands, seen from the rollers over which the bridge would tip. */
export function centreWords(margin: number, landed: boolean): string {
  if (landed) return said.shortOfLanding(metres(margin));
  return margin < 0 ? said.aheadFront(metres(-margin)) : said.behindFront(metres(margin));
}

/** "18.1 t in all (nose 6 × 280 kg, bays 11 × 1150 kg, decks 4 × 950 kg)", as parts. */
export function massWords(bridge: Bridge, stage: StageStatics): string {
  const { bay, deck, nose } = bridge.masses;
  const pieces = [
    ...(stage.nose > 0 ? [said.piece.nose(stage.nose, kilograms(nose))] : []),
    said.piece.bays(stage.bays, kilograms(bay)),
    ...(stage.decked.length > 0 ? [said.piece.decks(stage.decked.length, kilograms(deck))] : []),
    ...(stage.counterweight > 0 ? [said.piece.weights(kilograms(stage.counterweight))] : []),
  ];
  return pieces.join(', ');
}

function kilograms(value: number): string {
  return `${value} kg`;
}

/** Margin that the kit asks for during a move: once landed no more than a quarter of the way between the rollers. */
export function marginAsked(bridge: Bridge, kit: Kit, landed: boolean): number {
  const margin = kit.launch?.margin ?? 0;
  return landed ? Math.min(margin, bridge.landsAt / 4) : margin;
}

/** "front rollers" */
export function bearerWords({ of, at }: Pick<Reaction, 'of' | 'at'>): string {
  return of === 'rear' ? said.bearers.rear(metres(-at)) : said.bearers[of];
}

/** "143 kN", or what has to hold it down. */
export function forceWords(newtons: number): string {
  return newtons < 0 ? said.held(kilonewtons(-newtons)) : kilonewtons(newtons);
}

/** What each bearer carries: at the end of the move, and most. */
export function carryWords({ reactions, mostReactions }: StageStatics): string[] {
  return mostReactions.map((most) => {
    const end = reactions.find(({ of, at }) => of === most.of && (of === 'tail' || at === most.at));
    return said.carries(
      bearerWords(most),
      kilonewtons(most.newtons),
      forceWords(end?.newtons ?? 0),
    );
  });
}

/** How the tip hangs and where it meets the landing rollers. */
export function tipWords(stage: StageStatics, landedBefore: boolean): string {
  if (landedBefore) return `${said.tipRests}.`;
  if (stage.tipSag === null) return `${said.tipUnknown}.`;
  const sags = said.tipSags(metres(stage.tipSag, 2));
  if (stage.meets === null) return `${sags}.`;
  const meets =
    stage.meets < 0 ? said.meets(metres(-stage.meets, 2)) : said.meetsAbove(metres(stage.meets, 2));
  return `${sags}, ${meets}.`;
}

/** What it takes to move the bridge, or to hold it back. */
export function pushWords({ push }: Pick<StageStatics, 'push'>): string {
  if (push === null) return `${said.pushUnknown}.`;
  const by = [
    ...(push.vehicle === null ? [] : [push.vehicle ? said.byVehicle : said.byMore]),
    ...(push.people === null ? [] : [said.byPeople(push.people)]),
  ].join(' ');
  return push.holdBack > 0
    ? `${said.holdBackIs(kilonewtons(push.holdBack), by)}.`
    : `${said.pushIs(kilonewtons(push.newtons), by)}.`;
}
