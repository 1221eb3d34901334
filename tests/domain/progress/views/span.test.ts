import { describe, expect, it } from 'vitest';
import type { Bridge } from '#domain/bridge/bridge.ts';
import { spanOf } from '#domain/progress/views/span.ts';
import type { Effect } from '#domain/tasks/effect.ts';
import type { Work } from '#domain/tasks/work.ts';
import { need, opening, Site, siteWork, task } from '../site.ts';

// An invented bridge of 11 bays of 3 m with 6 nose sections of 3 m, built behind the front rollers and moved out.
const bridge: Bridge = {
  kit: { name: 'demo', title: 'Demo', hash: '', notForUse: true },
  manner: 'launched',
  bays: 11,
  bayLength: 3,
  length: 33,
  nose: 6,
  noseLength: 18,
  bearing: { near: 1, far: 1 },
  loadClass: 30,
  gap: 31,
  landsAt: 32,
  roomNeeded: 27,
  masses: { bay: 1150, deck: 950, nose: 280 },
  stages: [
    { stage: 1, bays: 11, decked: [], metres: 32, moved: 32, tip: 32, balance: 2.3, lands: true },
  ],
  parts: [],
  unknowns: [],
};

const all = (count: number) => Array.from({ length: count }, (_, index) => index + 1);

const effects: Record<string, Effect> = {
  ...Object.fromEntries(all(6).map((section) => [`nose-${section}`, { kind: 'nose', section }])),
  ...Object.fromEntries(
    all(11).flatMap((bay) =>
      (['left', 'right'] as const).map((side) => [
        `bay-${bay}-${side}`,
        { kind: 'bay', bay, side },
      ]),
    ),
  ),
  'rear-deck': { kind: 'deck', bays: [8, 9, 10, 11] },
  'first-move': { kind: 'move', stage: 1, metres: 31, lands: false },
  'last-move': { kind: 'move', stage: 2, metres: 1, lands: true },
  'nose-off': { kind: 'nose-off', sections: [1, 2, 3] },
  'seat-far': { kind: 'seated', bank: 'far' },
  'ramp-near': { kind: 'ramp', bank: 'near' },
  'approach-far': { kind: 'approach', bank: 'far' },
};

const work: Work = {
  ...siteWork,
  tasks: Object.entries(effects).map(([id, effect], index) =>
    task({ id, number: index + 1, effect, needs: [need('left', 6)] }),
  ),
  links: [],
  loads: [],
};

function built(...done: readonly string[]): Site {
  const given = new Site();
  const sent = opening(work);
  if (sent.kind !== 'open-build') throw new Error('not an opening');
  given.take({ ...sent, body: { ...sent.body, bridge } });
  for (const id of done) given.send('tell-finished', { task: id, crew: 'left' });
  return given;
}

const nose = all(6).map((section) => `nose-${section}`);
const bays = all(11).flatMap((bay) => [`bay-${bay}-left`, `bay-${bay}-right`]);

describe('the span', () => {
  it('shows each bay with its pieces, done only when all of them are', () => {
    const given = built('bay-1-left', 'bay-1-right', 'bay-2-left');
    given.send('tell-started', { task: 'bay-3-left', crew: 'left' });
    const span = spanOf(given.state);
    expect(span.bays.map(({ whole }) => whole).slice(0, 4)).toEqual([
      'done',
      'at-work',
      'at-work',
      'to-come',
    ]);
    expect(span.bays).toHaveLength(11);
    expect(span.bays[1]?.pieces).toEqual([
      { task: 'bay-2-left', status: 'done' },
      { task: 'bay-2-right', status: 'to-come' },
    ]);
  });

  it('shows deck, ramps, approaches and seats as told', () => {
    const given = built('rear-deck', 'seat-far', 'ramp-near');
    const span = spanOf(given.state);
    expect(span.bays[10]?.deck).toEqual({ task: 'rear-deck', status: 'done' });
    expect(span.bays[0]).toMatchObject({ deck: null, kerb: null });
    expect(span.seated).toEqual({ near: false, far: true });
    expect(span.ramps).toEqual({ near: 'done', far: null });
    expect(span.approaches).toEqual({ near: null, far: 'to-come' });
  });

  it('shows how far it moved, what comes next, and nose sections that are off again', () => {
    const given = built(...nose, 'first-move');
    expect(spanOf(given.state)).toMatchObject({
      moved: 31,
      toMove: 32,
      landed: false,
      nextMove: { task: 'last-move', metres: 1, lands: true },
    });
    given.send('tell-finished', { task: 'last-move', crew: 'left' });
    given.send('tell-finished', { task: 'nose-off', crew: 'left' });
    const span = spanOf(given.state);
    expect(span).toMatchObject({ moved: 32, landed: true, nextMove: null, balance: null });
    expect(span.nose.map(({ off }) => off)).toEqual([true, true, true, false, false, false]);
  });

  it('is empty where no task adds to a bridge', () => {
    const given = new Site();
    given.take(opening({ ...siteWork, tasks: [task({ id: 'a', number: 1 })], links: [] }));
    expect(spanOf(given.state)).toMatchObject({ nose: [], bays: [], moved: 0, balance: null });
  });
});

describe('the balance', () => {
  // By hand, metres behind the front rollers when the tip is 31 m ahead of them:
  // nose middles -29.5 to -14.5, sum -132, times 280 kg = -36,960; bay middles -11.5 to 18.5, sum 38.5, times
  // 1,150 kg = 44,275; together 7,315 kg m over 14,330 kg.
  it('lies where the moments of nose and bays put it', () => {
    const span = spanOf(built(...nose, ...bays, 'first-move').state);
    expect(span.balance).toBeCloseTo(7315 / 14_330, 9);
  });

  it('moves back with the rear bays decked', () => {
    // Middles of bays 8 to 11: 9.5, 12.5, 15.5, 18.5 m behind, sum 56, times 950 kg = 53,200.
    const span = spanOf(built(...nose, ...bays, 'rear-deck', 'first-move').state);
    expect(span.balance).toBeCloseTo((7315 + 53_200) / (14_330 + 3800), 9);
  });

  it('lies ahead of the rollers, as a negative number, when it would tip', () => {
    const span = spanOf(built(...nose, 'first-move').state);
    expect(span.balance).toBeCloseTo(-132 / 6, 9);
  });

  it('counts half a bay when one of its two sides stands', () => {
    // Nothing moved: the middle of bay 1 lies 18 + 1.5 m behind, the nose middles 1.5 to 16.5 m, sum 54.
    const span = spanOf(built(...nose, 'bay-1-left').state);
    expect(span.balance).toBeCloseTo((54 * 280 + 19.5 * 575) / (6 * 280 + 575), 9);
  });

  it('is not known while nothing stands', () => {
    expect(spanOf(built().state).balance).toBeNull();
  });
});
