import { describe, expect, it } from 'vitest';
import { conditions, conditionTable, gaps } from './conditions/table.ts';

const table = conditionTable({ runs: 1000, effort: 1000 });

function cell(gap: number, condition: string) {
  const found = table.find((one) => one.gap === gap && one.condition === condition);
  if (!found) throw new Error(`no build of ${gap} m, ${condition}`);
  return found;
}

describe.each([...gaps])('a full build over %s m', (gap) => {
  const day = cell(gap, 'by day');

  it.each(
    conditions.filter(({ opens, people }) => opens === 'later' && !people).map(({ name }) => name),
  )('opens later: %s', (name) => {
    expect(cell(gap, name).p50).toBeGreaterThan(day.p50);
    expect(cell(gap, name).p80).toBeGreaterThan(day.p80);
  });

  // Other people make another plan, whose spread may be a per cent narrower or wider: held by planned minutes.
  it('is planned later with fewer people, and no later with more', () => {
    expect(cell(gap, 'four people fewer').planned).toBeGreaterThan(day.planned);
    expect(cell(gap, 'two more in each crew').planned).toBeLessThanOrEqual(day.planned);
  });

  it('opens sooner with lights at night than without', () => {
    expect(cell(gap, 'night, work lights').p50).toBeLessThan(cell(gap, 'night').p50);
  });

  it('opens later with each condition more', () => {
    const all = cell(gap, 'night, rain, untrained');
    for (const one of ['night', 'rain', 'untrained crews']) {
      expect(all.p50).toBeGreaterThan(cell(gap, one).p50);
    }
  });

  it('takes no longer by a condition than its factor says: waiting does not stretch', () => {
    for (const name of [
      'rain',
      'untrained crews',
      'bad site',
      'protective dress',
      'heat, WBGT 28 C',
    ]) {
      const { p50, factor } = cell(gap, name);
      expect(p50 / day.p50, name).toBeLessThanOrEqual(factor + 0.02);
    }
  });
});

it('a longer gap takes longer under every condition', () => {
  for (const { name } of conditions) {
    const times = gaps.map((gap) => cell(gap, name).p50);
    expect(times, name).toEqual([...times].sort((a, b) => a - b));
    expect(new Set(times).size).toBe(gaps.length);
  }
});
