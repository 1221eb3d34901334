import type { Ground } from '#domain/bridge/ground.ts';
import type { BridgeAnswer } from './bridgeAnswer.ts';

/** A bridge in words, line by line: what it is, how it gets over, what it takes, what nobody has measured. */
export function bridgeText(bridge: BridgeAnswer, ground: Ground): string[] {
  const { kit, bearing, masses } = bridge;
  const nose =
    bridge.nose > 0 ? `, nose of ${bridge.nose} sections, ${metres(bridge.noseLength)}` : '';
  return [
    `${ground.name}: ${kit.title}, ${metres(bridge.length)}, class ${bridge.loadClass}${kit.notForUse ? ' (invented kit, not for use)' : ''}`,
    `${bridge.bays} bays of ${metres(bridge.bayLength)}${nose}.`,
    `Gap ${metres(bridge.gap)}; bearing ${metres(bearing.near)} near and ${metres(bearing.far)} far, beyond the setbacks.`,
    `Room behind: ${metres(bridge.roomNeeded)} needed, ${ground.roomBehind === null ? 'not measured' : `${metres(ground.roomBehind)} there`}.`,
    `One bay ${masses.bay} kg, its deck ${masses.deck} kg${bridge.nose > 0 ? `, a nose section ${masses.nose} kg` : ''}.`,
    '',
    ...bridge.stages.map(stageLine),
    '',
    ...bridge.parts.map(
      ({ part, count, kilograms, carriers }) =>
        `${String(count).padStart(5)}  ${part}, ${kilograms} kg${carriers > 1 ? `, ${carriers} to lift` : ''}`,
    ),
    ...section(packedLines(bridge)),
    ...section(choiceLines(bridge)),
    ...section(bridge.ground.map(({ sentence }) => sentence)),
    ...section(rescueLines(bridge)),
    ...section(bridge.unknowns),
    ...section(hangsLines(bridge)),
    '',
    'Planning aid; the manual of the equipment on site, local codes and the qualified person in charge decide.',
  ];
}

function section(lines: readonly string[]): string[] {
  return lines.length > 0 ? ['', ...lines] : [];
}

function packedLines({ stores }: BridgeAnswer): string[] {
  if (!stores.packing) {
    return [];
  }
  const { trucks, tooBig } = stores.packing;
  const tonnes = (stores.kilograms / 1000).toFixed(1);
  const loaded = trucks.map(({ kilograms }) => `${(kilograms / 1000).toFixed(1)} t`).join(', ');
  return [
    `${tonnes} t in all; packed in the order of need on ${trucks.length} trucks: ${loaded}.`,
    ...tooBig.map((part) => `No truck of this kit takes: ${part}.`),
  ];
}

function choiceLines({ choice }: BridgeAnswer): string[] {
  return choice.fitting.map((one) => {
    const nose = one.nose > 0 ? `, ${one.nose} nose sections` : '';
    const bare = `${one.bays} bays${nose}, ${one.moves} moves, room ${metres(one.roomNeeded)}, class ${one.loadClass}, ${one.loads} loads, at least ${one.leastMinutes.toFixed(0)} min of work`;
    return one.against === null ? `Advised: ${bare}.` : `Other: ${bare}: ${one.against}.`;
  });
}

function rescueLines({ rescue }: BridgeAnswer): string[] {
  return rescue
    ? [
        `Over water: a boat at once available and ${rescue.buoys} ring buoys, each with ${metres(rescue.line)} of line (29 CFR 1926.106).`,
      ]
    : [];
}

function hangsLines({ hangsOn }: BridgeAnswer): string[] {
  return hangsOn.length > 0
    ? [`The answer hangs on what is not measured: ${hangsOn.join(', ')}.`]
    : [];
}

function stageLine(stage: BridgeAnswer['stages'][number]): string {
  const decked = stage.decked.length > 0 ? `, ${stage.decked.length} of them decked` : '';
  const balance =
    stage.balance === null ? '' : `, balance ${metres(stage.balance)} behind the front rollers`;
  const lands = stage.lands ? ', tip lands' : '';
  const off = stage.noseOff?.length ? `, then ${stage.noseOff.length} nose sections off` : '';
  const weights = stage.counterweight ? `, ${stage.counterweight} kg on the tail` : '';
  const sag = stage.tipSag ? `, tip down ${metres(stage.tipSag)}` : '';
  return `Move ${stage.stage}: after ${stage.bays} bays${decked}${weights}, ${metres(stage.metres)} to ${metres(stage.moved)}${lands}${balance}${sag}${off}.`;
}

function metres(length: number): string {
  return `${length.toFixed(1)} m`;
}
