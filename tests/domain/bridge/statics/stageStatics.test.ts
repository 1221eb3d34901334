import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { balanceBehind } from '#domain/bridge/balance.ts';
import type { Bridge } from '#domain/bridge/bridge.ts';
import { designBridge } from '#domain/bridge/design.ts';
import { runsOf } from '#domain/bridge/statics/body.ts';
import { centreOfGravity, gravity } from '#domain/bridge/statics/centreOfGravity.ts';
import { placeAt, sagAt, weigh } from '#domain/bridge/statics/place.ts';
import {
  bodyAt,
  rollersOf,
  stageStatics,
  stiffnessOf,
} from '#domain/bridge/statics/stageStatics.ts';
import type { Kit, LaunchRules } from '#domain/kit/kit.ts';
import { bridgeOver, granted, ground, heron, larchFord } from '../../kit/heronKit.ts';
import { anyLaunch } from '../anyLaunch.ts';

const rules = heron.launch as LaunchRules;

/** Designs, and runs a check on each that can be. */
function forAllDesigns(check: (bridge: Bridge, kit: Kit) => void): void {
  let designs = 0;
  fc.assert(
    fc.property(anyLaunch, ({ kit, asked }) => {
      const designed = designBridge({ ...asked, roomBehind: null }, kit, '');
      if (designed.ok) {
        designs += 1;
        check(designed.value, kit);
      }
    }),
    { numRuns: 150 },
  );
  expect(designs).toBeGreaterThan(50);
}

describe('reactions', () => {
  it('add up to the weight, and their moments close about the tail', () => {
    forAllDesigns((bridge, kit) => {
      for (const [row, stage] of stageStatics(bridge, kit, 0).entries()) {
        const sum = stage.reactions.reduce((newtons, one) => newtons + one.newtons, 0);
        expect(sum / (stage.kilograms * gravity)).toBeCloseTo(1, 9);
        const runs = runsOf(bodyAt(bridge, row));
        const tail = stage.moved - bridge.noseLength - stage.bays * bridge.bayLength;
        const held = stage.reactions.reduce(
          (all, { at, newtons }) => all + newtons * (at - tail),
          0,
        );
        const weights = runs.reduce((all, { from, to, kilograms }) => {
          return all + kilograms * gravity * (stage.moved - (from + to) / 2 - tail);
        }, 0);
        expect(held / weights).toBeCloseTo(1, 6);
      }
    });
  });

  it('are never more at any point of a move than the most that is said, nor pull down while it is held', () => {
    forAllDesigns((bridge, kit) => {
      const rollers = rollersOf(bridge, kit);
      let landed = false;
      for (const [row, stage] of stageStatics(bridge, kit, 0).entries()) {
        const body = weigh(bodyAt(bridge, row));
        if (!body) throw new Error('nothing built');
        const most = new Map(
          stage.mostReactions.map((one) => [
            `${one.of} ${one.of === 'rear' ? one.at : ''}`,
            one.newtons,
          ]),
        );
        for (let step = 0; step <= 60; step += 1) {
          const tip = stage.moved - stage.metres * (1 - step / 60);
          for (const { of, at, newtons } of placeAt(body, tip, landed, rollers).reactions) {
            // Stages are rounded to a tenth of a millimetre.
            expect(newtons).toBeGreaterThan(-1e-3 * body.kilograms * gravity);
            expect(newtons).toBeLessThanOrEqual(
              (most.get(`${of} ${of === 'rear' ? at : ''}`) ?? 0) + 1e-3 * body.kilograms * gravity,
            );
          }
        }
        landed = landed || stage.lands;
      }
    });
  });
});

describe('the centre of gravity', () => {
  it('shifts back by half a bay with each equal bay', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 40 }),
        fc.double({ min: 0.5, max: 6, noNaN: true }),
        fc.integer({ min: 100, max: 4000 }),
        (bays, bayLength, bay) => {
          const girder = { bayLength, nose: 0, noseLength: 0, masses: { bay, deck: 0, nose: 0 } };
          const behind = (count: number) =>
            centreOfGravity(
              runsOf({ girder, bays: count, decked: [], sectionsOff: 0, counterweight: 0 }),
            )?.behindTip ?? 0;
          expect(behind(bays + 1) - behind(bays)).toBeCloseTo(bayLength / 2, 9);
        },
      ),
    );
  });

  it('is as far behind as the stages of the design say, and the margin is that', () => {
    forAllDesigns((bridge, kit) => {
      for (const [row, stage] of stageStatics(bridge, kit, 0).entries()) {
        const balance = bridge.stages[row]?.balance;
        if (balance !== null && balance !== undefined) {
          expect(stage.margin).toBeCloseTo(balance, 3);
          expect(stage.centreOfGravity).toBeCloseTo(-balance, 3);
          expect(stage.ratio ?? 2).toBeGreaterThan(1 - 1e-9);
        }
      }
    });
  });

  it('is the same seen in a mirror and in feet and pounds', () => {
    const feet = 0.3048;
    const pound = 0.45359237;
    const girder = {
      bayLength: 3,
      nose: 6,
      noseLength: 18,
      masses: { bay: 1150, deck: 950, nose: 280 },
    };
    const inFeet = {
      bayLength: 3 / feet,
      nose: 6,
      noseLength: 18 / feet,
      masses: { bay: 1150 / pound, deck: 950 / pound, nose: 280 / pound },
    };
    const state = { bays: 11, decked: [9, 10, 11] };
    const metric = balanceBehind(girder, { ...state, tip: 30 }) ?? 0;
    expect((balanceBehind(inFeet, { ...state, tip: 30 / feet }) ?? 0) * feet).toBeCloseTo(
      metric,
      9,
    );
    // Mirrored: what was behind is ahead, by as much.
    const runs = runsOf({ girder, ...state, sectionsOff: 0, counterweight: 0 });
    const length = 18 + 33;
    const mirrored = runs.map((run) => ({ ...run, from: length - run.to, to: length - run.from }));
    const behind = centreOfGravity(runs)?.behindTip ?? 0;
    expect(centreOfGravity(mirrored)?.behindTip).toBeCloseTo(length - behind, 9);
  });
});

describe('a longer nose', () => {
  it('never lowers the margin at the landing', () => {
    fc.assert(
      fc.property(anyLaunch, ({ kit, asked }) => {
        const lands = asked.gap + 1;
        const bays = Math.ceil((asked.gap + 2) / kit.bay.length);
        const section = kit.nose?.length ?? 1;
        const margin = (nose: number) =>
          balanceBehind(
            {
              bayLength: kit.bay.length,
              nose,
              noseLength: nose * section,
              masses: { bay: kit.bay.bare, deck: kit.bay.deck, nose: kit.nose?.mass ?? 0 },
            },
            { tip: lands, bays, decked: [] },
          ) ?? 0;
        // Only a nose whose rear joint is still ahead of the rollers, at its lever longer than it is heavy.
        for (let nose = 0; nose < 8; nose += 1) {
          const lighter = (kit.nose?.mass ?? 0) / section <= kit.bay.bare / kit.bay.length;
          if (lighter) expect(margin(nose + 1)).toBeGreaterThanOrEqual(margin(nose) - 1e-9);
        }
      }),
    );
  });
});

describe('the launch at Larch Ford', () => {
  const bridge = granted(designBridge(larchFord, heron, ''));
  const stages = stageStatics(bridge, heron, 0);

  it('lands with the tip half a metre down and the front rollers carrying most', () => {
    // By hand: 18.13 t with the centre 2.338 m behind, on front rollers and those 12 m back.
    const landing = stages.find(({ lands }) => lands);
    const weight = 18_130 * 9.80665;
    expect(landing?.reactions[0]).toMatchObject({ of: 'front', at: 0 });
    expect(landing?.reactions[0]?.newtons).toBeCloseTo((weight * (12 - 2.3378378)) / 12, 0);
    expect(landing?.reactions[1]).toMatchObject({ of: 'rear', at: -12 });
    expect(landing?.meets).toBeLessThan(-0.3);
    expect(landing?.meets).toBeGreaterThan(-0.7);
    expect(landing?.overhang).toBe(32);
  });

  it('rolls on the level with a twentieth of its weight and is held back on a slope', () => {
    const landing = stages.find(({ lands }) => lands);
    expect(landing?.push?.newtons).toBeCloseTo(0.05 * 18_130 * 9.80665, 3);
    expect(landing?.push?.holdBack).toBe(0);
    const steep = stageStatics(bridge, heron, 0.08).find(({ lands }) => lands);
    expect(steep?.push?.newtons).toBe(0);
    const angle = Math.atan(0.08);
    const weight = 18_130 * 9.80665;
    const away = weight * Math.sin(angle) - 0.05 * weight * Math.cos(angle);
    expect(steep?.push?.holdBack).toBeCloseTo(away, 3);
    expect(steep?.push?.people).toBe(Math.ceil(away / 250));
  });

  it('keeps people out from behind the vehicle to the tip', () => {
    expect(stages[0]?.keepOff).toEqual({ from: -24 - rules.vehicleRoom, to: 6 });
  });

  it('takes the nose that is off from what moves', () => {
    expect(stages.map(({ nose }) => nose)).toEqual([6, 6, 6, 6, 6, 6, 3]);
  });
});

describe('the sag of the tip', () => {
  it('is nowhere in a move more than the most that is said', () => {
    for (const gap of [14, 22, 31, 38, 43]) {
      const bridge = bridgeOver(gap);
      const stiffness = stiffnessOf(heron, bridge.nose);
      const rollers = rollersOf(bridge, heron);
      let landed = false;
      for (const [row, stage] of stageStatics(bridge, heron, 0).entries()) {
        const body = weigh(bodyAt(bridge, row));
        for (let step = 0; body && !landed && step <= 200; step += 1) {
          const tip = stage.moved - stage.metres * (1 - step / 200);
          const sag = sagAt(body, tip, placeAt(body, tip, false, rollers), stiffness) ?? 0;
          expect(sag).toBeLessThanOrEqual((stage.tipSag ?? 0) + 1e-9);
        }
        landed = landed || stage.lands;
      }
    }
  });

  it('is not reckoned without stiffness, and there are no statics of a floated bridge', () => {
    const { stiffness, ...bay } = heron.bay;
    const kit = { ...heron, bay };
    const bridge = granted(designBridge(ground(), kit, ''));
    expect(
      stageStatics(bridge, kit, 0).every(({ tipSag, meets }) => tipSag === null && meets === null),
    ).toBe(true);
    const { launch, ...floated } = heron;
    expect(stageStatics(bridge, floated, 0)).toEqual([]);
  });
});
