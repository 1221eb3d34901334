import { describe, expect, it } from 'vitest';
import { readGround } from '#domain/bridge/readGround.ts';
import faulty from '#tests/corpus/grounds/faulty.json' with { type: 'json' };
import reedMere from '#tests/corpus/grounds/reedMere.json' with { type: 'json' };
import { larchFord } from '../kit/heronKit.ts';

function faultsOf(json: unknown, file?: string) {
  const read = readGround(json, file);
  return read.ok ? [] : read.reason;
}

describe('reading a ground', () => {
  it('takes measured and unmeasured ones', () => {
    expect(faultsOf(larchFord)).toEqual([]);
    expect(faultsOf(reedMere)).toEqual([]);
  });

  it('names every fault at once by its path', () => {
    const faults = faultsOf(faulty, 'faulty.json');
    expect(faults.map(({ path }) => path).sort()).toEqual([
      '/depth',
      '/far',
      '/gap',
      '/loadClass',
      '/name',
      '/near/height',
      '/near/kind',
    ]);
    expect(faults.every(({ file }) => file === 'faulty.json')).toBe(true);
  });

  it('names a time zone that nobody knows', () => {
    expect(faultsOf({ ...larchFord, zone: 'Mars/Olympus' })).toEqual([
      expect.objectContaining({ path: '/zone', found: '"Mars/Olympus"' }),
    ]);
  });

  it('looks into a place that is given', () => {
    const place = { latitude: 91, longitude: 0 };
    expect(faultsOf({ ...larchFord, place }).map(({ path }) => path)).toEqual(['/place/latitude']);
  });
});
