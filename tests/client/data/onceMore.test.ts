import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { onceMore } from '#client/data/onceMore.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

it('loads once when that works', async () => {
  const load = vi.fn(async () => 'page');
  await expect(onceMore(load)()).resolves.toBe('page');
  expect(load).toHaveBeenCalledTimes(1);
});

it('loads again when the first time fails', async () => {
  const load = vi.fn(async () => 'page').mockRejectedValueOnce(new TypeError('no link'));
  const loaded = onceMore(load)();
  await vi.runAllTimersAsync();
  await expect(loaded).resolves.toBe('page');
  expect(load).toHaveBeenCalledTimes(2);
});

it('fails when the second time fails too', async () => {
  const load = vi.fn(async () => Promise.reject(new TypeError('no link')));
  const failed = expect(onceMore(load)()).rejects.toThrow('no link');
  await vi.runAllTimersAsync();
  await failed;
  expect(load).toHaveBeenCalledTimes(2);
});
