import { describe, expect, it } from 'vitest';
import { designBridge } from '#domain/bridge/design.ts';
import { holdNumbers } from '#domain/bridge/safety/holdNumbers.ts';
import { orderOfWork } from '#domain/tasks/fromKit/orderOfWork.ts';
import { bridgeOver, granted, heron, larchFord } from '../kit/heronKit.ts';
import { everythingBefore, expectSoundOrder, graphOf, taskOf } from './workChecks.ts';

const bridge = granted(designBridge(larchFord, heron, 'hash'));
const work = granted(orderOfWork(bridge, heron));
const graph = graphOf(work);
const allBefore = (id: string) => everythingBefore(graph, id);

describe('the order of work at Larch Ford', () => {
  it('is sound', () => {
    expectSoundOrder(work);
  });

  it('has 154 tasks in ten phases, as the demo was drawn up', () => {
    const phases = new Map<string, number>();
    for (const { phase } of work.tasks) phases.set(phase, (phases.get(phase) ?? 0) + 1);
    expect(Object.fromEntries(phases)).toEqual({
      'Ready site': 14,
      Loads: 12,
      'Rollers and jacks': 11,
      Nose: 12,
      Bays: 33,
      Moves: 21,
      Landing: 12,
      'Jack and seat': 11,
      Deck: 19,
      Finish: 9,
    });
    expect(work.tasks).toHaveLength(154);
  });

  it('has twelve hold points: rollers, seven moves, two jackings, seated, open', () => {
    const holds = work.tasks.filter(({ hold }) => hold).map(({ id }) => id);
    expect(new Set(holds)).toEqual(
      new Set([
        'rollers-hold',
        'jack-ready-far',
        'jack-ready-near',
        'seated',
        'open',
        ...[1, 2, 3, 4, 5, 6, 7].map((stage) => `ready-${stage}`),
      ]),
    );
    expect(holds).toHaveLength(12);
  });

  it('counts everybody: a platoon of 34 and twelve attached', () => {
    const people = (attached: boolean) =>
      work.crews
        .filter((crew) => crew.attached === attached)
        .reduce((sum, crew) => sum + crew.people, 0);
    expect(people(false)).toBe(34);
    expect(people(true)).toBe(12);
  });

  it('brings six loads that weigh what is on them', () => {
    // Tonnes: site gear 3.5; nose 6 x 0.28, bay 1.15 and bearings 0.77; five bays of 1.15, twice; six decks of 0.95;
    // five decks, kerbs 0.55 and ramps 1.0.
    expect(work.loads.map(({ tonnes }) => tonnes)).toEqual([3.5, 3.6, 5.75, 5.75, 5.7, 6.3]);
    expect(work.loads[4]).toMatchObject({ id: 'load-5', name: 'Truck 5, deck for bays 6 to 11' });
  });

  it('names tasks as people say them', () => {
    const names = ['bay-9-left', 'move-4', 'move-5', 'ready-4', 'deck-3', 'kerb-1', 'unload-5'];
    expect(names.map((id) => taskOf(work, id).name)).toEqual([
      'Bay 9, left side',
      'Move 4, 6 m',
      'Move 5, 8 m, tip lands',
      'Ready for move 4',
      'Deck bay 3',
      'Kerbs, bays 9 to 11',
      'Unload truck 5',
    ]);
  });

  it('builds a bay on the bay ahead, and behind the move that made room', () => {
    expect(allBefore('bay-9-left')).toContain('move-4');
    expect(allBefore('bay-9-left')).toContain('bay-8-right');
    expect(allBefore('bay-9-left')).not.toContain('brace-9');
    expect(allBefore('bay-8-left')).toContain('move-3');
    expect(allBefore('bay-8-left')).not.toContain('move-4');
    expect(allBefore('brace-9')).toContain('secure-4');
  });

  it('braces before it moves', () => {
    for (const { stage, bays } of bridge.stages) {
      for (let bay = 1; bay <= bays; bay += 1) {
        expect(allBefore(`move-${stage}`)).toContain(`brace-${bay}`);
      }
    }
  });

  it('holds the landing until the rear bays are decked and the landing roller is level', () => {
    for (const bay of [8, 9, 10, 11]) {
      expect(allBefore('ready-5')).toContain(`deck-${bay}`);
      expect(allBefore('ready-4')).not.toContain(`deck-${bay}`);
    }
    expect(allBefore('ready-5')).toContain('landing-level');
    expect(allBefore('ready-4')).not.toContain('landing-level');
    expect(taskOf(work, 'deck-8').loads).toEqual(['load-5']);
  });

  it('asks the inspector for the bays and the decks that the balance needs', () => {
    const measures = (id: string) =>
      Object.fromEntries(
        (taskOf(work, id).hold?.measures ?? []).map(({ key, least }) => [key, least]),
      );
    expect(measures('ready-5')).toMatchObject({ bays: 11, decked: 4 });
    expect(measures('ready-4')).toMatchObject({ bays: 8 });
    expect(measures('ready-4')).not.toHaveProperty('decked');
    expect(measures('seated')).toMatchObject({ near: 0.9, far: 0.9 });
  });

  it('asks for the balance until the tip has landed, beside what was reckoned for the move', () => {
    const balance = (id: string) =>
      taskOf(work, id).hold?.measures.find(({ key }) => key === 'margin');
    const numbers = holdNumbers(bridge, heron, {});
    for (const stage of [1, 2, 3, 4, 5]) {
      expect(balance(`ready-${stage}`)).toMatchObject({ unit: 'm', least: 2 });
      expect(balance(`ready-${stage}`)?.reckoned).toBeCloseTo(numbers[stage - 1]?.margin ?? 0, 2);
    }
    expect(balance('ready-6')).toBeUndefined();
    expect(balance('ready-7')).toBeUndefined();
  });

  it('asks for the wind by the kit’s limit, with the range where it ought to lie', () => {
    const wind = taskOf(work, 'ready-1').hold?.measures.find(({ key }) => key === 'wind');
    expect(wind).toMatchObject({ unit: 'm/s', most: heron.limits?.wind, soft: { most: 8 } });
  });

  it('asks for level at every corner of the seated bridge', () => {
    const keys = taskOf(work, 'seated').hold?.measures.map(({ key }) => key);
    for (const corner of ['near-left', 'near-right', 'far-left', 'far-right'])
      expect(keys).toContain(corner);
  });

  it('takes the nose off lot by lot, before the next move and before jacking', () => {
    expect(allBefore('nose-off-1')).toContain('move-6');
    expect(allBefore('ready-7')).toContain('nose-off-3');
    expect(allBefore('ready-7')).not.toContain('nose-off-4');
    expect(allBefore('nose-off-4')).toContain('move-7');
    expect(allBefore('jack-far')).toContain('nose-off-6');
  });

  it('jacks one end at a time', () => {
    expect(allBefore('jack-near')).toContain('lower-far');
    expect(allBefore('seated')).toContain('lower-near');
  });

  it('decks from the rear once seated, and lays kerbs two bays behind', () => {
    expect(allBefore('deck-7')).toContain('seated');
    expect(allBefore('deck-6')).toContain('deck-7');
    expect(allBefore('kerb-1')).toContain('deck-7');
    expect(allBefore('kerb-2')).toContain('deck-4');
    expect(allBefore('kerb-2')).not.toContain('deck-3');
    expect(allBefore('kerb-4')).toContain('deck-1');
  });

  it('opens after everything else', () => {
    expect(allBefore('open').size).toBe(153);
  });

  it('has a boat ready before anyone is over the water', () => {
    const over = work.zones
      .filter(({ bank }) => bank === 'over' || bank === 'far' || bank === 'water')
      .map(({ id }) => id);
    for (const { id, zones } of work.tasks) {
      if (id !== 'boat-ready' && zones.some((zone) => over.includes(zone))) {
        expect([id, allBefore(id).has('boat-ready')]).toEqual([id, true]);
      }
    }
  });

  it('uses no stores that have not been unloaded and counted', () => {
    for (const { id, phase, loads } of work.tasks) {
      if (phase !== 'Loads') {
        const tasks = loads.flatMap((load) => [
          load.replace('load', 'unload'),
          load.replace('load', 'count'),
        ]);
        expect(tasks.filter((one) => !allBefore(id).has(one))).toEqual([]);
      }
    }
  });

  it('closes assembly, rollers, bridge, ahead and landing in a move, to eight people and the vehicle', () => {
    const move = taskOf(work, 'move-4');
    expect(move.keepOff).toBe(true);
    expect(new Set(move.zones)).toEqual(
      new Set(['assembly', 'rollers', 'bridge', 'ahead', 'landing']),
    );
    const push = move.needs.find(({ anyOf }) => anyOf.includes('push'));
    const people = move.needs.reduce((sum, need) => sum + need.people.usual, 0);
    expect(people - (push?.people.usual ?? 0)).toBe(8);
    expect(taskOf(work, 'unload-4').zones).toEqual(['stores']);
  });

  it('puts cautions on all keep-off work and on every lift, short enough for a card', () => {
    for (const { keepOff, cautions, effect } of work.tasks) {
      if (keepOff || effect?.kind === 'bay') expect(cautions.length).toBeGreaterThan(0);
      expect(cautions.length).toBeLessThanOrEqual(4);
      for (const caution of cautions) expect(caution.length).toBeLessThanOrEqual(70);
    }
  });

  it('numbers tasks so that none stands before what it comes after', () => {
    const numbers = new Map(work.tasks.map(({ id, number }) => [id, number]));
    const wrong = work.links.filter(
      ({ from, to, counts }) =>
        counts === 'finish' && (numbers.get(from) ?? 0) > (numbers.get(to) ?? 0),
    );
    expect(wrong).toEqual([]);
  });

  it('says each reason once, but keeps every link from a hold', () => {
    const plain = work.links.filter(({ counts }) => counts === 'finish');
    const isHold = (id: string) => taskOf(work, id).hold !== undefined;
    const needless = plain.filter(({ from, to }) => {
      if (isHold(from)) return false;
      const others = plain.filter((link) => link.from === from && link.to !== to);
      const only = { ...work, links: plain };
      return others.some((link) => everythingBefore(graphOf(only), to).has(link.to));
    });
    expect(needless).toEqual([]);
    expect(work.links).toContainEqual({ from: 'seated', to: 'deck-1', counts: 'finish', wait: 0 });
  });
});

describe('an order of work that cannot be', () => {
  it('is refused for another kit than the bridge was designed with', () => {
    const order = orderOfWork(bridge, { ...heron, name: 'crane' });
    expect(order).toMatchObject({ ok: false, reason: { code: 'kit-unknown' } });
  });

  it('is refused with the place in the kit file that does not hold together', () => {
    const order = orderOfWork(bridge, { ...heron, zones: heron.zones.slice(1) });
    expect(order).toMatchObject({ ok: false, reason: { code: 'work-faulty' } });
    if (!order.ok) expect(order.reason.sentence).toContain('a zone of this kit');
  });

  it('is refused with the tasks that go in a circle', () => {
    const changed = heron.order.map((task) =>
      task.id === 'orders' ? { ...task, after: [{ task: 'open' }] } : task,
    );
    const order = orderOfWork(bridgeOver(31), { ...heron, order: changed });
    expect(order).toMatchObject({ ok: false, reason: { code: 'loop-in-order' } });
    if (!order.ok) expect(order.reason.of).toContain('orders');
  });
});
