import { describe, expect, it } from 'vitest';
import { switched } from '#client/screens/forecast/doubtDraft.ts';
import { tryDoubt } from '#client/screens/forecast/tryDoubt.ts';
import { doubtInForce } from '#domain/progress/views/doubtInForce.ts';
import { now, state } from '../fixtures/larchFord.ts';

const at = new Date(now).toISOString();
const luck = { runs: 200, seed: 7 };
const doubt = doubtInForce(state);

describe('a doubt on trial', () => {
  it('changes nothing when it is the doubt in force', () => {
    const { before, after } = tryDoubt(state, state.plan!, doubt, at, luck);
    expect(after).toEqual(before);
  });

  it('shows that bad weather opens later, on the same luck', () => {
    const bad = switched(doubt, { part: 'weather' }, true);
    const { before, after } = tryDoubt(state, state.plan!, bad, at, luck);
    expect(after.p50).toBeGreaterThan(before.p50);
    expect(after.p90).toBeGreaterThan(before.p90);
    expect(after).toMatchObject(luck);
  });

  it('shows a narrower spread when day and crews no longer count', () => {
    const sure = switched(switched(doubt, { part: 'day' }, false), { part: 'crews' }, false);
    const { before, after } = tryDoubt(state, state.plan!, sure, at, luck);
    expect(after.sd).toBeLessThan(before.sd);
  });
});
