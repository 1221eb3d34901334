import { describe, expect, it } from 'vitest';
import { addressOf, keyOf, placeOf } from '#client/data/place.ts';

describe('an address', () => {
  it('names the build, the page and the secret', () => {
    expect(placeOf('/b/larch-ford/chief', '#s3cret')).toEqual({
      page: 'chief',
      build: 'larch-ford',
      secret: 's3cret',
    });
  });

  it('without a fragment has no secret', () => {
    expect(placeOf('/', '')).toEqual({ page: 'start', secret: '' });
  });

  for (const path of [
    '/b/larch/boss',
    '/b/larch',
    '/nowhere',
    '/b/la rch/chief',
    '/b/larch/chief/x',
  ]) {
    it(`${path} is no page`, () => {
      expect(placeOf(path, '#s')).toEqual({ page: 'unknown', secret: 's' });
    });
  }

  it('made from a place leads back to it, secret and all', () => {
    for (const page of ['leader', 'log', 'chief', 'inspector', 'commander'] as const) {
      const place = { page, build: 'larch', secret: 'abc' };
      const url = new URL(addressOf(place), 'http://here');
      expect(placeOf(url.pathname, url.hash)).toEqual(place);
    }
  });
});

describe('a page below another', () => {
  for (const [page, sub] of [
    ['leader', 'work/bay-9.left'],
    ['commander', 'forecast'],
  ] as const) {
    it(`of the ${page} leads back to itself`, () => {
      const place = { page, build: 'larch', secret: 'abc', sub };
      const url = new URL(addressOf(place), 'http://here');
      expect(url.pathname).toBe(`/b/larch/${page}/${sub}`);
      expect(placeOf(url.pathname, url.hash)).toEqual(place);
    });
  }

  it('is none for anybody else, and the commander has the one', () => {
    expect(placeOf('/b/larch/inspector/work', '#abc').page).toBe('unknown');
    expect(placeOf('/b/larch/commander/work', '#abc').page).toBe('unknown');
  });
});

describe('what the device keeps', () => {
  it('is apart for two links of one build, and never under the secret itself', () => {
    expect(keyOf('larch', 'one')).not.toBe(keyOf('larch', 'two'));
    expect(keyOf('larch', 'one')).not.toContain('one');
  });
});
