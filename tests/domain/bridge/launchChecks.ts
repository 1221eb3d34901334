import { expect } from 'vitest';
import type { Bridge } from '#domain/bridge/bridge.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import type { Kit } from '#domain/kit/kit.ts';

/** Centre of gravity behind the front rollers, reckoned from moments about the tail instead of the rollers. */
function behindRollers(
  bridge: Bridge,
  tip: number,
  bays: number,
  decked: readonly number[],
): number {
  const tail = bridge.noseLength + bays * bridge.bayLength;
  const { bay, deck, nose } = bridge.masses;
  let mass = bridge.nose * nose + bays * bay;
  let moment = bridge.nose * nose * (tail - bridge.noseLength / 2);
  moment += bays * bay * ((bays * bridge.bayLength) / 2);
  for (const number of decked) {
    mass += deck;
    moment += deck * ((bays - number + 0.5) * bridge.bayLength);
  }
  return tail - tip - moment / mass;
}

/** All that must hold of a launched bridge, whatever the ground and the kit. */
export function expectSoundLaunch(bridge: Bridge, ground: Ground, kit: Kit): void {
  const { near, far } = bridge.bearing;
  const rules = kit.launch;
  if (!rules) throw new Error('a launched kit has rules');
  const span = ground.gap + ground.near.setback + ground.far.setback;
  expect(near + far + span).toBeCloseTo(bridge.length, 3);
  expect(near).toBeGreaterThanOrEqual(kit.bearing.near - 1e-3);
  expect(far).toBeGreaterThanOrEqual(kit.bearing.far - 1e-3);
  expect(bridge.length).toBeCloseTo(bridge.bays * kit.bay.length, 6);
  expect(bridge.landsAt).toBeCloseTo(span + rules.rollers.near + rules.rollers.far, 3);

  const landing = bridge.stages.findIndex(({ lands }) => lands);
  expect(landing).toBeGreaterThanOrEqual(0);
  expect(bridge.stages.filter(({ lands }) => lands)).toHaveLength(1);
  let moved = 0;
  let bays = 0;
  let room = 0;
  for (const [at, stage] of bridge.stages.entries()) {
    expect(stage.stage).toBe(at + 1);
    expect(stage.bays).toBeGreaterThanOrEqual(bays);
    expect(stage.metres).toBeGreaterThan(0);
    expect(stage.metres).toBeLessThanOrEqual(rules.longestMove + 1e-3);
    room = Math.max(room, bridge.noseLength + stage.bays * bridge.bayLength - moved);
    moved += stage.metres;
    expect(stage.moved).toBeCloseTo(moved, 2);
    expect(stage.tip).toBeCloseTo(moved, 2);
    if (at <= landing) {
      const balance = behindRollers(bridge, stage.tip, stage.bays, stage.decked);
      expect(stage.balance).toBeCloseTo(balance, 2);
      expect(stage.balance).toBeGreaterThanOrEqual(rules.margin - 1e-3);
      // Enough stands behind the rollers that the bridge rests on them.
      expect(bridge.noseLength + stage.bays * bridge.bayLength - stage.tip).toBeGreaterThan(0);
    } else {
      expect(stage.balance).toBeNull();
    }
    expect(stage.decked.length).toBeLessThanOrEqual(rules.deckEarly);
    bays = stage.bays;
  }
  expect(bays).toBe(bridge.bays);
  expect(bridge.stages[landing]?.tip).toBeCloseTo(bridge.landsAt, 3);
  expect(bridge.stages[landing]?.bays).toBe(bridge.bays);
  // At rest the front of bay 1 is as far past the far bearing line as the bearing is long.
  expect(moved - bridge.noseLength).toBeCloseTo(rules.rollers.near + span + far, 2);
  expect(bridge.roomNeeded).toBeCloseTo(room + rules.vehicleRoom, 2);
  const off = bridge.stages.flatMap(({ noseOff }) => noseOff ?? []);
  expect(off).toEqual([...off].sort((a, b) => a - b));
  expect(new Set(off).size).toBe(off.length);
}
