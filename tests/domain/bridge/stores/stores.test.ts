import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { carrying } from '#domain/bridge/stores/carrying.ts';
import { deckCircuit } from '#domain/bridge/stores/deckCircuit.ts';
import { layStacks } from '#domain/bridge/stores/layStacks.ts';
import { lotsInOrder } from '#domain/bridge/stores/needs.ts';
import { partsOnLoads } from '#domain/bridge/stores/onLoad.ts';
import { packTrucks } from '#domain/bridge/stores/packTrucks.ts';
import { shortParts } from '#domain/bridge/stores/shortParts.ts';
import { stillStarts } from '#domain/bridge/stores/stillStarts.ts';
import { storesOf } from '#domain/bridge/stores/stores.ts';
import type { Carry, Pallet, Truck } from '#domain/kit/kit.ts';
import { orderOfWork } from '#domain/tasks/fromKit/orderOfWork.ts';
import { usesOf } from '#domain/tasks/fromKit/uses.ts';
import { bridgeOver, granted, heron } from '../../kit/heronKit.ts';
import { everythingBefore, graphOf, taskOf } from '../../tasks/workChecks.ts';

const bridge = bridgeOver(31);
const work = granted(orderOfWork(bridge, heron));
const uses = usesOf(bridge, heron, work);
const lots = lotsInOrder(bridge, heron, uses);
const truck = heron.truck as Truck;
const carry = heron.carry as Carry;
const total = (counts: Iterable<readonly [string, number]>) => {
  const sums = new Map<string, number>();
  for (const [part, count] of counts) sums.set(part, (sums.get(part) ?? 0) + count);
  return sums;
};
const listed = total(bridge.parts.map(({ part, count }) => [part, count]));

describe('parts in the order they are needed', () => {
  it('are all the parts of the bridge, each once', () => {
    const inLots = lots.flatMap(({ parts }) =>
      parts.map(({ part, count }) => [part.name, count] as const),
    );
    expect(total(inLots)).toEqual(listed);
  });

  it('come first where the work wants them first', () => {
    const numbers = lots.flatMap(({ task }) => (task === '' ? [] : taskOf(work, task).number));
    expect(numbers).toEqual([...numbers].sort((a, b) => a - b));
    expect(lots[0]?.group).toBe('site');
    const bays = lots.filter(({ group }) => group === 'bay').map(({ of }) => of);
    expect(bays).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
    // The four rear bays are decked first: they hold the landing.
    const decks = lots.filter(({ group }) => group === 'deck').map(({ of }) => of);
    expect(decks.slice(0, 4).sort((a, b) => (a ?? 0) - (b ?? 0))).toEqual([8, 9, 10, 11]);
  });
});

describe('packing trucks', () => {
  it('carries all of it, in order, within mass and bed, whatever the truck', () => {
    const trucks = fc.record({
      mass: fc.integer({ min: 600, max: 20_000 }),
      length: fc.double({ min: 6, max: 13, noNaN: true }),
      width: fc.double({ min: 2, max: 3, noNaN: true }),
      height: fc.double({ min: 1.4, max: 3, noNaN: true }),
    });
    const sizes = new Map(heron.parts.map((part) => [part.name, part]));
    fc.assert(
      fc.property(trucks, (any) => {
        const packing = packTrucks(lots, any);
        expect(packing.tooBig).toEqual([]);
        const counts = packing.trucks.flatMap(({ parts }) =>
          parts.map(({ part, count }) => [part, count] as const),
        );
        expect(total(counts)).toEqual(listed);
        for (const { kilograms, parts } of packing.trucks) {
          const mass = parts.reduce(
            (sum, one) => sum + one.count * (sizes.get(one.part)?.mass ?? 0),
            0,
          );
          expect(kilograms).toBeCloseTo(mass, 6);
          expect(mass).toBeLessThanOrEqual(any.mass);
          let bed = 0;
          for (const { part, count } of parts) {
            const { length = 0, width = 0, height = 1 } = sizes.get(part)?.size ?? {};
            const layers = Math.max(1, Math.floor(any.height / height + 1e-9));
            bed += Math.ceil(count / layers) * length * width;
          }
          expect(bed).toBeLessThanOrEqual(any.length * any.width + 1e-9);
        }
        const firsts = packing.trucks.map(({ firstTask }) =>
          firstTask === '' ? 1e9 : taskOf(work, firstTask).number,
        );
        expect(firsts).toEqual([...firsts].sort((a, b) => a - b));
      }),
      { numRuns: 60 },
    );
  });

  it('names what no truck takes', () => {
    expect(packTrucks(lots, { ...truck, mass: 400 }).tooBig).toEqual([
      'Site gear: tools, lines, lamps',
    ]);
    expect(packTrucks(lots, { ...truck, length: 3, width: 2.4 }).tooBig).toContain('Floor beam');
  });
});

describe('packing pallets', () => {
  const pallet = heron.pallet as Pallet;

  it('puts every part on one pallet or loose on one truck, within mass and bed, whatever the pallet', () => {
    const pallets = fc.record({
      empty: fc.integer({ min: 1, max: 150 }),
      mass: fc.integer({ min: 300, max: 2500 }),
      length: fc.double({ min: 0.8, max: 4, noNaN: true }),
      width: fc.double({ min: 0.8, max: 2.4, noNaN: true }),
      height: fc.double({ min: 0.3, max: 1.6, noNaN: true }),
    });
    const parts = new Map(heron.parts.map((part) => [part.name, part]));
    fc.assert(
      fc.property(pallets, (any) => {
        const packing = packTrucks(lots, truck, any);
        const onPallets = new Map(packing.pallets.map((one) => [one.name, one]));
        const stood = packing.trucks.flatMap((one) => one.pallets);
        expect(stood.sort()).toEqual([...onPallets.keys()].sort());
        const onTrucks = packing.trucks.flatMap((one) => one.parts);
        expect(total(onTrucks.map(({ part, count }) => [part, count] as const))).toEqual(listed);
        for (const one of packing.pallets) {
          const mass = one.parts.reduce(
            (sum, { part, count }) => sum + count * (parts.get(part)?.mass ?? 0),
            0,
          );
          expect(one.kilograms).toBeCloseTo(mass, 6);
          expect(one.loaded).toBeCloseTo(any.empty + mass, 6);
          expect(mass).toBeLessThanOrEqual(any.mass);
          expect(one.bed).toBeLessThanOrEqual(any.length * any.width + 1e-9);
        }
        for (const { kilograms, loaded, pallets } of packing.trucks) {
          expect(loaded).toBeCloseTo(kilograms + pallets.length * any.empty, 6);
          expect(loaded).toBeLessThanOrEqual(truck.mass + 1e-9);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('stands no more pallets on a truck than its bed has places', () => {
    // 6.2 m by 2.4 m takes two by two of 3 m by 1.2 m.
    const timber = heron.parts.filter(({ id }) => id === 'packing');
    const many = [
      { group: 'site', of: null, task: '', parts: timber.map((part) => ({ part, count: 900 })) },
    ];
    const packing = packTrucks(many, { ...truck, mass: 100_000, length: 6.2, width: 2.4 }, pallet);
    expect(Math.max(...packing.trucks.map(({ pallets }) => pallets.length))).toBe(4);
  });

  it('begins pallets in the order in which the work wants what is on them', () => {
    const { pallets } = packTrucks(lots, truck, pallet);
    const firsts = pallets.map(({ firstTask }) =>
      firstTask === '' ? 1e9 : taskOf(work, firstTask).number,
    );
    expect(firsts).toEqual([...firsts].sort((a, b) => a - b));
    expect(pallets.length).toBeGreaterThan(1);
  });

  it('leaves loose what is too long for a pallet', () => {
    const { pallets } = packTrucks(lots, truck, pallet);
    const on = new Set(pallets.flatMap(({ parts }) => parts.map(({ part }) => part)));
    // Girder panels are 3.1 m, floor beams 5.2 m and deck planks 3.9 m long.
    for (const name of ['Girder panel', 'Floor beam', 'Deck plank']) expect(on).not.toContain(name);
    expect(on).toContain('Panel pin');
  });
});

describe('what a load carries', () => {
  const onLoads = partsOnLoads(heron, bridge);

  it('is all the parts of the bridge over all loads, each once', () => {
    const counts = [...onLoads.values()].flat().map(({ part, count }) => [part, count] as const);
    expect(total(counts)).toEqual(listed);
  });

  it('weighs what the order of work says of the load', () => {
    for (const { id, tonnes } of work.loads) {
      const kilograms = (onLoads.get(id) ?? []).reduce(
        (sum, one) => sum + one.count * one.kilograms,
        0,
      );
      expect(kilograms / 1000).toBeCloseTo(tonnes ?? 0, 3);
    }
  });
});

describe('stacks', () => {
  it('lie behind the rollers without lying on each other, what is needed first nearest', () => {
    const stacks = layStacks(lots, 2);
    expect(new Set(stacks.map(({ group }) => group)).size).toBe(stacks.length);
    for (const [at, one] of stacks.entries()) {
      expect(one.from).toBeGreaterThanOrEqual(2);
      expect(one.to).toBeGreaterThan(one.from);
      for (const other of stacks.slice(at + 1)) {
        if (other.side === one.side) expect(other.from).toBeGreaterThan(one.to);
      }
    }
    const kilograms = stacks.reduce((sum, one) => sum + one.kilograms, 0);
    expect(kilograms).toBeCloseTo(
      bridge.parts.reduce((sum, part) => sum + part.count * part.kilograms, 0),
      6,
    );
  });
});

describe('carrying', () => {
  it('takes the walk there loaded and back empty, for every piece', () => {
    const panels = carrying(heron, bridge, 30).find(({ part }) => part === 'Girder panel');
    // By hand: 0.3 + 30/45 + 0.4 + 30/75 minutes a piece, 44 pieces by six.
    const each = 0.3 + 30 / 45 + 0.4 + 30 / 75;
    expect(panels?.minutes).toBeCloseTo(each, 9);
    expect(panels?.personMinutes).toBeCloseTo(each * 44 * 6, 6);
    expect(panels?.share).toBeCloseTo(170 / 6, 9);
  });

  it('leaves out what a machine lifts, and warns of long carries without forbidding them', () => {
    const near = carrying(heron, bridge, 8);
    expect(near.map(({ part }) => part)).not.toContain('Site gear: tools, lines, lamps');
    // Eight men may lift 257 kg by the standard, but carry only 242; beams and ramps weigh 250.
    const warned = near.filter(({ warnings }) => warnings.length > 0);
    expect(warned.map(({ part }) => part)).toEqual(['Bearing beam', 'Ramp half']);
    expect(warned[0]?.warnings[0]).toContain('carry at most 241 kg; 9 should take it');
    expect(carrying(heron, bridge, 40).some(({ warnings }) => warnings.length > 0)).toBe(true);
  });

  it('says nothing of minutes where the kit says nothing of carrying', () => {
    const { carry: _, ...kit } = heron;
    expect(carrying(kit, bridge, 30).every(({ minutes }) => minutes === null)).toBe(true);
    expect(storesOf(bridge, kit, work).deck).toBeNull();
  });
});

describe('the circuit on the deck', () => {
  it('keeps the place of laying busy with the teams that it asks for, and not with one fewer', () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 90, noNaN: true }), (walk) => {
        const { teams, round, minutes } = deckCircuit(carry, walk);
        expect(round / teams).toBeLessThanOrEqual(carry.set + 1e-9);
        if (teams > 1) expect(round / (teams - 1)).toBeGreaterThan(carry.set);
        // Acted out piece by piece: each waits for its team to come round and for the place to be free.
        const back: number[] = Array.from({ length: teams }, () => 0);
        let free = 0;
        for (let piece = 0; piece < 60; piece += 1) {
          const team = piece % teams;
          const there = (back[team] ?? 0) + carry.lift + walk / carry.loaded;
          free = Math.max(there, free) + carry.set;
          back[team] = free + walk / carry.empty;
        }
        expect(minutes(60, teams)).toBeCloseTo(free, 6);
      }),
    );
  });
});

describe('a short count', () => {
  const short = (id: string, count: number) =>
    shortParts(bridge, heron, uses, new Map([[id, count]]));

  it('stops the last bays first, by the first task that lacks its parts', () => {
    // 44 panels, four to a bay: with 42 bay 11 cannot be built.
    expect(short('girder-panel', 42)).toEqual([
      { part: 'Girder panel', missing: 2, firstTask: 'bay-11-left' },
    ]);
    expect(short('girder-panel', 39)[0]?.firstTask).toBe('bay-10-left');
    expect(short('girder-panel', 44)).toEqual([]);
    expect(shortParts(bridge, heron, uses, new Map())).toEqual([]);
  });

  it('of what the whole bridge shares stops its first use', () => {
    expect(short('bearing-beam', 1)[0]?.firstTask).toMatch(/bearing|bracing-over/);
  });
});

describe('a load that does not come', () => {
  it('stops what it carries and all that comes after, and nothing else', () => {
    const missing = new Set(['load-5']);
    const left = new Set(stillStarts(work, missing));
    const graph = graphOf(work);
    for (const { id, loads } of work.tasks) {
      const needs = (one: string) => taskOf(work, one).loads.some((load) => missing.has(load));
      const stopped =
        loads.some((load) => missing.has(load)) || [...everythingBefore(graph, id)].some(needs);
      expect([id, left.has(id)]).toEqual([id, !stopped]);
    }
    expect(left.size).toBeGreaterThan(60);
    expect(stillStarts(work, new Set())).toHaveLength(work.tasks.length);
  });
});
