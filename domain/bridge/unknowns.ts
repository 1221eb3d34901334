import type { Ground } from './ground.ts';

/** What the bridge hangs on and nobody has measured, each with why it matters. `room` is what the work needs, metres. */
export function unknownsOf(ground: Ground, room: number): string[] {
  const unknowns: string[] = [];
  if (ground.roomBehind === null) {
    unknowns.push(
      `Room behind the near bank: not measured, and the work needs ${room.toFixed(1)} m.`,
    );
  }
  for (const bank of ['near', 'far'] as const) {
    if (ground[bank].height === null) {
      unknowns.push(
        ground[bank].kind === 'natural'
          ? `Height of the ${bank} bank: not measured, so its setback cannot be checked.`
          : `Height of the ${bank} bank: not measured.`,
      );
    }
  }
  if (ground.water.depth === null) {
    unknowns.push('Depth of the water: not measured.');
  }
  if (ground.water.rise === null) {
    unknowns.push('Whether the water rises: not measured.');
  }
  if (ground.place === null) {
    unknowns.push('Place: not given, so daylight cannot be reckoned.');
  }
  return unknowns;
}
