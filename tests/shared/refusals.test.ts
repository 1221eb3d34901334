import { expect, it } from 'vitest';
import { refusalCodes } from '#domain/refusal.ts';
import { refusalStatus } from '#shared/refusals.ts';

it('every refusal has one HTTP status, of a client’s fault but for the server’s own', () => {
  expect(Object.keys(refusalStatus).sort()).toEqual([...refusalCodes].sort());
  for (const [code, status] of Object.entries(refusalStatus)) {
    const own = code === 'server-failed' || code === 'storage-failed';
    expect(Math.floor(status / 100), code).toBe(own ? 5 : 4);
  }
});

it('no code is listed twice', () => {
  expect(new Set(refusalCodes).size).toBe(refusalCodes.length);
});
