import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Bridge } from '#domain/bridge/bridge.ts';
import { designBridge } from '#domain/bridge/design.ts';
import type { Kit, LaunchRules } from '#domain/kit/kit.ts';
import { checkStages } from '#tests/support/checkStages.ts';
import { bridgeOver, granted, ground, heron, larchFord } from '../../kit/heronKit.ts';
import { anyLaunch } from '../anyLaunch.ts';

const rules = heron.launch as LaunchRules;
const { lot, ...free } = rules;
const freeHeron: Kit = { ...heron, launch: free };

describe('the order of adding and moving', () => {
  it('is approved, whatever the kit, by a checker written from moments alone', () => {
    let approved = 0;
    fc.assert(
      fc.property(anyLaunch, ({ kit, asked }) => {
        const designed = designBridge(asked, kit, '');
        if (designed.ok) {
          approved += 1;
          expect(checkStages(designed.value, kit, asked.roomBehind)).toEqual([]);
        }
      }),
      { numRuns: 600 },
    );
    expect(approved).toBeGreaterThan(200);
  });

  it('is found wanting by that checker when a stage is spoilt', () => {
    const bridge = bridgeOver(31);
    const spoilt = (row: number, other: Partial<Bridge['stages'][number]>): Bridge => ({
      ...bridge,
      stages: bridge.stages.map((stage, at) => (at === row ? { ...stage, ...other } : stage)),
    });
    expect(checkStages(bridge, heron, 40)).toEqual([]);
    expect(checkStages(spoilt(3, { bays: 7 }), heron, 40)[0]).toContain('stage 4: only');
    expect(checkStages(spoilt(4, { decked: [] }), heron, 40)[0]).toContain('stage 5: only');
    expect(checkStages(spoilt(5, { decked: [] }), heron, 40)).toContain('stage 6: a deck was lost');
    expect(checkStages(bridge, heron, 30).join()).toContain('does not fit behind');
  });

  it('keeps to the drill of the kit where there is room for it', () => {
    const bridge = granted(designBridge(larchFord, heron, ''));
    expect(bridge.stages.slice(0, 4).map(({ bays, metres }) => [bays, metres])).toEqual([
      [2, 6],
      [4, 6],
      [6, 6],
      [8, 6],
    ]);
  });

  it('is staged otherwise where there is not, and never with more bays than fit', () => {
    const tight = granted(designBridge({ ...larchFord, roomBehind: 31 }, heron, ''));
    expect(checkStages(tight, heron, 31)).toEqual([]);
    expect(tight.bays).toBe(11);
    expect(tight.stages.length).toBeGreaterThan(7);
  });

  it('has the fewest moves of all orders set out to the decimetre, without a drill', () => {
    for (const gap of [12, 19, 24, 31, 36, 40]) {
      for (const room of [31, 35, 40, 50, 70]) {
        const asked = ground({ gap, roomBehind: room });
        const designed = designBridge(asked, freeHeron, '');
        if (
          designed.ok &&
          designed.value.stages.every(({ decked, lands }) => lands || decked.length === 0)
        ) {
          const moves = designed.value.stages.findIndex(({ lands }) => lands) + 1;
          expect([gap, room, moves]).toEqual([gap, room, fewestMoves(designed.value, room)]);
        }
      }
    }
  });

  it('never has more moves with more room', () => {
    const moves = (room: number) => {
      const designed = designBridge(ground({ gap: 31, roomBehind: room }), freeHeron, '');
      return designed.ok ? designed.value.stages.length : 100;
    };
    for (let room = 28; room < 60; room += 1) {
      expect(moves(room + 1)).toBeLessThanOrEqual(moves(room));
    }
  });
});

/**
 * Fewest moves to the landing, by trying them all: breadth first over decimetres of tip and bays built, with the
 * balance by the lever of three lumps. Decks only on the move that lands, as in the orders it is asked about.
 */
function fewestMoves(bridge: Bridge, room: number): number {
  const { bay, deck, nose } = bridge.masses;
  const weight = bridge.nose * nose;
  const ahead = (tip: number, bays: number, decks: number) => {
    const mass = weight + bays * bay + decks * deck;
    const tail = tip - bridge.noseLength - bays * 3;
    const moment =
      weight * (tip - bridge.noseLength / 2) +
      bays * bay * (tail + (bays * 3) / 2) +
      decks * deck * (tail + (decks * 3) / 2);
    return moment / mass;
  };
  const goes = (tip: number, bays: number, decks: number) =>
    ahead(tip, bays, decks) <= -rules.margin + 1e-9;
  const lands = Math.round(bridge.landsAt * 10);
  let places = new Map<number, number>([[0, 0]]);
  for (let moves = 1; moves < 40; moves += 1) {
    const next = new Map<number, number>();
    for (const [tip, built] of places) {
      for (let bays = Math.max(1, built); bays <= bridge.bays; bays += 1) {
        if (bridge.noseLength + bays * 3 - tip / 10 > room - rules.vehicleRoom + 1e-6) break;
        for (let to = tip + 1; to <= Math.min(lands, tip + rules.longestMove * 10); to += 1) {
          const decks = to === lands && bays === bridge.bays ? rules.deckEarly : 0;
          const held = Array.from({ length: decks + 1 }, (_, count) => count);
          if (!held.some((count) => goes(to / 10, bays, count))) break;
          if (to === lands && bays === bridge.bays) return moves;
          if (to < lands) next.set(to, Math.max(next.get(to) ?? 0, bays));
        }
      }
    }
    places = next;
  }
  return Number.POSITIVE_INFINITY;
}

describe('weights on the tail', () => {
  const weighted: Kit = {
    ...heron,
    nose: { ...heron.nose, length: 3, mass: 280, most: 5 },
    launch: { ...rules, counterweight: { mass: 200, most: 20 } },
  };

  it('hold the landing where the nose is too short, as few as will do', () => {
    const bridge = granted(designBridge(larchFord, weighted, ''));
    const landing = bridge.stages.find(({ lands }) => lands);
    expect(landing?.counterweight).toBeGreaterThan(0);
    expect((landing?.counterweight ?? 0) % 200).toBe(0);
    expect(checkStages(bridge, weighted, 40)).toEqual([]);
    const lighter: Bridge = {
      ...bridge,
      stages: bridge.stages.map((stage) =>
        stage.lands ? { ...stage, counterweight: (stage.counterweight ?? 0) - 200 } : stage,
      ),
    };
    expect(checkStages(lighter, weighted, 40).join()).toContain('only');
  });

  it('are not used where a nose alone will do', () => {
    const rich = { ...heron, launch: { ...rules, counterweight: { mass: 200, most: 20 } } };
    expect(granted(designBridge(larchFord, rich, '')).stages).toEqual(
      granted(designBridge(larchFord, heron, '')).stages,
    );
  });
});

describe('what would free a launch that tips', () => {
  const short: Kit = {
    ...heron,
    nose: { length: 3, mass: 280, most: 4 },
    launch: { ...rules, heaviestPush: 1e6 },
  };
  const refused = designBridge(larchFord, short, '');
  const sentence = refused.ok ? '' : (refused.reason[0]?.sentence ?? '');

  it('names nose sections, and that many do free it', () => {
    const more = /take (\w+) more nose sections? \(the kit has 4\)/.exec(sentence)?.[1];
    const count = more === 'one' ? 1 : Number(more);
    const nose = (most: number) => ({ ...short, nose: { length: 3, mass: 280, most } });
    expect(designBridge(larchFord, nose(4 + count), '').ok).toBe(true);
    expect(designBridge(larchFord, nose(3 + count), '').ok).toBe(false);
  });

  it('names kilograms on the tail, and that much does free it', () => {
    const mass = Number(/set (\d+) kg on the tail/.exec(sentence)?.[1]);
    const weight = (kilograms: number): Kit => ({
      ...short,
      launch: { ...rules, heaviestPush: 1e6, counterweight: { mass: kilograms, most: 1 } },
    });
    expect(designBridge(larchFord, weight(mass), '').ok).toBe(true);
    expect(designBridge(larchFord, weight(mass - 2), '').ok).toBe(false);
  });
});
