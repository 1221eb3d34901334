import { expect, it } from 'vitest';
import { isProven } from '#domain/schedule/proven.ts';

it('A plan is proven when it opens no whole second after the bound', () => {
  expect(isProven({ minutesToOpen: 331 / 60, lowerBound: 331 / 60 })).toBe(true);
  expect(isProven({ minutesToOpen: 0.1 + 0.2, lowerBound: 0.3 })).toBe(true);
  expect(isProven({ minutesToOpen: 332 / 60, lowerBound: 331 / 60 })).toBe(false);
});
