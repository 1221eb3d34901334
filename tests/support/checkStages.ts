import type { Bridge } from '#domain/bridge/bridge.ts';
import type { Kit } from '#domain/kit/kit.ts';

const slack = 2e-3;

/** Mass and centre of gravity from the tail forwards: laid bay by bay from there, by adding moments. */
function fromTail(
  bridge: Bridge,
  bays: number,
  decked: readonly number[],
  off: number,
  weights: number,
) {
  let [mass, moment, at] = [weights, 0, 0];
  for (let bay = bays; bay >= 1; bay -= 1) {
    const bayMass = bridge.masses.bay + (decked.includes(bay) ? bridge.masses.deck : 0);
    moment += bayMass * (at + bridge.bayLength / 2);
    mass += bayMass;
    at += bridge.bayLength;
  }
  const section = bridge.nose === 0 ? 0 : bridge.noseLength / bridge.nose;
  for (let left = bridge.nose; left > off; left -= 1) {
    moment += bridge.masses.nose * (at + section / 2);
    mass += bridge.masses.nose;
    at += section;
  }
  return { mass, centre: moment / mass };
}

/**
 * Everything that is wrong with the stages of a launched bridge, in words; none when they are sound. Written from
 * moments alone and from the kit's rules, and shares no code with what finds the stages: walks along every move in
 * small steps with what is built, decked, weighted and taken off by then.
 */
export function checkStages(bridge: Bridge, kit: Kit, roomBehind: number | null): string[] {
  const wrong: string[] = [];
  const rules = kit.launch;
  if (!rules) return ['no launch rules'];
  let [tip, bays, off, landed] = [0, 0, 0, false];
  let laid: readonly number[] = [];
  for (const stage of bridge.stages) {
    const say = (what: string) => wrong.push(`stage ${stage.stage}: ${what}`);
    if (stage.bays < bays) say('bays were lost');
    if (stage.bays > bays && landed) say('built after the landing');
    if (laid.some((bay) => !stage.decked.includes(bay))) say('a deck was lost');
    if (stage.decked.some((bay) => bay > stage.bays || bay < 1)) say('a deck on no bay');
    if (!landed && stage.decked.length > rules.deckEarly) say('too many decked early');
    if (stage.metres <= 0) say('does not move');
    if (stage.metres > rules.longestMove + slack) say('moves too far at once');
    const weights = stage.counterweight ?? 0;
    const { mass = 0, most = 0 } = rules.counterweight ?? {};
    if (weights > mass * most + slack) say('more weights than there are');
    bays = stage.bays;
    laid = stage.decked;
    const { centre } = fromTail(bridge, bays, laid, off, weights);
    const length = bridge.noseLength + bays * bridge.bayLength;
    if (roomBehind !== null && length - tip > roomBehind - rules.vehicleRoom + slack) {
      say('does not fit behind');
    }
    for (let step = 0; step <= 40; step += 1) {
      const at = tip + (stage.metres * step) / 40;
      const ahead = at - length + centre;
      if (!landed && ahead > -rules.margin + slack) {
        say(`only ${(-ahead).toFixed(3)} m behind at ${at.toFixed(2)} m`);
        break;
      }
      if (!landed && at > bridge.landsAt + slack) say('goes past the landing in the air');
      if (landed && ahead > bridge.landsAt + slack) say('tips over the landing');
    }
    tip += stage.metres;
    if (Math.abs(tip - stage.tip) > slack) say('the tip is elsewhere');
    if (stage.lands !== (!landed && Math.abs(tip - bridge.landsAt) < slack)) say('lands elsewhere');
    landed = landed || stage.lands;
    for (const section of stage.noseOff ?? []) {
      off += 1;
      if (section !== off) say('the nose comes off out of order');
      const rear = tip - (section * bridge.noseLength) / bridge.nose;
      if (rear < bridge.landsAt - slack) say('a section comes off short of the far rollers');
    }
  }
  if (!landed) wrong.push('never lands');
  if (bays !== bridge.bays) wrong.push('bays are missing');
  return wrong;
}
