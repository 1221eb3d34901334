import { describe, expect, it } from 'vitest';
import {
  bayWords,
  centreWords,
  forceWords,
  marginAsked,
  massWords,
  pushWords,
  stageDoes,
  tipWords,
} from '#client/drawing/launchText.ts';
import { stageStatics } from '#domain/bridge/statics/stageStatics.ts';
import { bridgeOver, heron } from '#tests/domain/kit/heronKit.ts';

const bridge = bridgeOver(31);
const stages = stageStatics(bridge, heron, 0);
const stage = (number: number) => stages[number - 1]!;

// The launch of the demo's outline: after 2, 4, 6, 8 and 11 bays, bays 8 to 11 decked before the tip lands.
describe('what a stage does, in words', () => {
  it('names what is built, decked and moved', () => {
    expect(stageDoes(bridge, stage(1))).toBe(
      'Build 6 nose sections and bays 1 to 2, then move 6.0 m',
    );
    expect(stageDoes(bridge, stage(4))).toBe('Build bays 7 to 8, then move 6.0 m');
    expect(stageDoes(bridge, stage(5))).toBe(
      'Build bays 9 to 11 and deck bays 8 to 11, then move 8.0 m, the tip lands',
    );
    expect(stageDoes(bridge, stage(6))).toBe('Move 9.0 m');
  });

  it('gives the masses that the margin comes from', () => {
    expect(massWords(bridge, stage(5))).toBe(
      'nose 6 × 280 kg, bays 11 × 1150 kg, decks 4 × 950 kg',
    );
    expect(massWords(bridge, stage(7))).toContain('nose 3 × 280 kg');
  });

  it('says how the tip hangs until it rests', () => {
    expect(tipWords(stage(4), false)).toMatch(/^hangs 0\.\d\d m at most\.$/);
    expect(tipWords(stage(5), false)).toMatch(/meets the landing rollers 0\.\d\d m below/);
    expect(tipWords(stage(6), true)).toBe('rests on the landing rollers.');
    expect(tipWords({ ...stage(4), tipSag: null }, false)).toContain('not reckoned');
  });

  it('says who pushes, or who holds it back', () => {
    // 18.13 t on level rollers of 0.05: 8.9 kN, and 36 people of 250 N.
    expect(pushWords(stage(5))).toBe('8.9 kN: the vehicle or 36 people.');
    const steep = stageStatics(bridge, heron, 0.1)[4]!;
    expect(pushWords(steep)).toMatch(/^runs away with .+ kN: held by the vehicle/);
    expect(pushWords({ push: null })).toContain('no rolling resistance');
  });
});

describe('a margin in words', () => {
  it('is behind the front rollers, ahead of them when it tips, and short of the landing once landed', () => {
    expect(centreWords(2.34, false)).toBe('2.3 m behind the front rollers');
    expect(centreWords(-0.5, false)).toBe('0.5 m ahead of the front rollers');
    expect(centreWords(17.3, true)).toBe('17.3 m short of the landing rollers');
  });

  it('is held against what the kit asks for', () => {
    expect(marginAsked(bridge, heron, false)).toBe(heron.launch?.margin);
    expect(marginAsked({ ...bridge, landsAt: 4 }, heron, true)).toBe(1);
  });

  it('says when a roller has to hold the bridge down', () => {
    expect(forceWords(-12_000)).toBe('held down with 12 kN');
    expect(forceWords(8_890)).toBe('8.9 kN');
  });
});

it('bays are named in runs', () => {
  expect(bayWords([4])).toBe('bay 4');
  expect(bayWords([11, 8, 9, 10, 3])).toBe('bays 3, 8 to 11');
});
