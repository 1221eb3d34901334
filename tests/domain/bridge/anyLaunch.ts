import fc from 'fast-check';
import type { Ground } from '#domain/bridge/ground.ts';
import type { Kit, LaunchRules } from '#domain/kit/kit.ts';
import { ground, heron } from '../kit/heronKit.ts';

export type AnyLaunch = { readonly kit: Kit; readonly asked: Ground };

const { rollers, lot, ...rest } = heron.launch as LaunchRules;

/** Launched kits of any masses, lengths and rules, and a gap for each; room measured or not. */
export const anyLaunch = fc
  .record({
    gap: fc.double({ min: 4, max: 44, noNaN: true }),
    room: fc.option(fc.double({ min: 15, max: 70, noNaN: true })),
    bare: fc.integer({ min: 400, max: 3000 }),
    deck: fc.integer({ min: 0, max: 2000 }),
    nose: fc.integer({ min: 60, max: 900 }),
    section: fc.double({ min: 1, max: 5, noNaN: true }),
    lot: fc.option(fc.integer({ min: 1, max: 4 })),
    noseOff: fc.integer({ min: 1, max: 4 }),
    deckEarly: fc.integer({ min: 0, max: 8 }),
    weights: fc.option(fc.record({ mass: fc.integer({ min: 50, max: 500 }), most: fc.nat(8) })),
    margin: fc.double({ min: 0, max: 3, noNaN: true }),
    longestMove: fc.double({ min: 12, max: 20, noNaN: true }),
    behind: fc.uniqueArray(fc.integer({ min: 2, max: 24 }), { maxLength: 3 }),
  })
  .map((any): AnyLaunch => {
    const launch: LaunchRules = {
      ...rest,
      rollers: { ...rollers, behind: any.behind },
      ...(any.lot === null ? {} : { lot: any.lot }),
      noseOff: any.noseOff,
      deckEarly: any.deckEarly,
      margin: any.margin,
      longestMove: any.longestMove,
      heaviestPush: 1e6,
      ...(any.weights && any.weights.most > 0 ? { counterweight: any.weights } : {}),
    };
    const kit: Kit = {
      ...heron,
      bay: { ...heron.bay, bare: any.bare, deck: any.deck },
      nose: { ...heron.nose, length: any.section, mass: any.nose, most: 12 },
      launch,
    };
    return { kit, asked: ground({ gap: any.gap, roomBehind: any.room }) };
  });
