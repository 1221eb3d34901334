import { describe, expect, it } from 'vitest';
import { choices } from '#domain/bridge/choices.ts';
import { type ChoiceTimes, choiceTimes } from '#domain/bridge/choiceTimes.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import larchFord from '#domain/kits/larchFord.json' with { type: 'json' };
import { orderOfWork } from '#domain/tasks/fromKit/orderOfWork.ts';
import { heron } from '#tests/domain/kit/heronKit.ts';

const dark = [{ from: 0, to: 10_000 }];

function times(bays: number, more: { dark?: typeof dark } = {}): ChoiceTimes {
  const { fitting } = choices(larchFord as Ground, heron, '');
  const chosen = fitting.find(({ bridge }) => bridge.bays === bays);
  const work = chosen && orderOfWork(chosen.bridge, heron);
  if (!work?.ok) throw new Error(`no bridge of ${bays} bays`);
  const found = choiceTimes(work.value, { runs: 300, seed: 5, dark: [], ...more });
  if (!found.ok) throw new Error(found.reason.sentence);
  return found.value;
}

describe('when each bridge of a choice opens', () => {
  it('is later for the longer one, and eight in ten come after the even chance', () => {
    const [short, long] = [times(11), times(12)];
    expect(short.planned).toBeLessThan(long.planned);
    expect(short.p50).toBeLessThan(long.p50);
    expect(short.p80).toBeLessThan(long.p80);
    expect(short.p80).toBeGreaterThan(short.p50);
  });

  it('is no sooner than the longest chain of its order of work', () => {
    const { fitting } = choices(larchFord as Ground, heron, '');
    expect(times(11).planned).toBeGreaterThanOrEqual((fitting[0]?.leastMinutes ?? 0) - 1 / 30);
  });

  it('is later by night', () => {
    expect(times(11, { dark }).p50).toBeGreaterThan(times(11).p50);
  });

  it('refuses an order of work that cannot be planned', () => {
    const { fitting } = choices(larchFord as Ground, heron, '');
    const work = fitting[0] && orderOfWork(fitting[0].bridge, heron);
    if (!work?.ok) throw new Error('no order of work');
    const none = choiceTimes({ ...work.value, crews: [] }, { runs: 10, seed: 1, dark: [] });
    expect(none.ok).toBe(false);
  });
});
