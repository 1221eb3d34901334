import type { Bridge, Stage } from '#domain/bridge/bridge.ts';
import type { Ground } from '#domain/bridge/ground.ts';

/** A bridge in words, line by line: what it is, how it gets over, what it takes, what nobody has measured. */
export function bridgeText(bridge: Bridge, ground: Ground): string[] {
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
    ...(bridge.unknowns.length > 0 ? ['', ...bridge.unknowns] : []),
    '',
    'Planning aid; the manual of the equipment on site, local codes and the qualified person in charge decide.',
  ];
}

function stageLine(stage: Stage): string {
  const decked = stage.decked.length > 0 ? `, ${stage.decked.length} of them decked` : '';
  const balance =
    stage.balance === null ? '' : `, balance ${metres(stage.balance)} behind the front rollers`;
  const lands = stage.lands ? ', tip lands' : '';
  const off = stage.noseOff?.length ? `, then ${stage.noseOff.length} nose sections off` : '';
  return `Move ${stage.stage}: after ${stage.bays} bays${decked}, ${metres(stage.metres)} to ${metres(stage.moved)}${lands}${balance}${off}.`;
}

function metres(length: number): string {
  return `${length.toFixed(1)} m`;
}
