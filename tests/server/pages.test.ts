import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type TestServer, testServer } from '#tests/support/server.ts';

const folder = mkdtempSync(join(tmpdir(), 'spanwright-pages-'));
const page = '<!doctype html><title>Spanwright</title>';
const script = `export const much = '${'bay '.repeat(2000)}';`;
let server: TestServer;
beforeAll(async () => {
  mkdirSync(join(folder, 'assets'));
  writeFileSync(join(folder, 'index.html'), page);
  writeFileSync(join(folder, 'worker.js'), 'void 0;');
  writeFileSync(join(folder, 'assets', 'main-4f2a.js'), script);
  server = await testServer({ pages: folder });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const get = (url: string, headers = {}) => server.app.inject({ url, headers });

describe('the pages', () => {
  it.each(['/', '/b/ford/leader', '/b/ford/chief?mitten=1'])('%s is the one page', async (url) => {
    const reply = await get(url);
    expect([reply.statusCode, reply.body]).toEqual([200, page]);
    expect(reply.headers['content-type']).toMatch(/^text\/html/);
    expect(reply.headers['cache-control']).toBe('no-cache');
  });

  it('files with a hash in their name are kept by browsers for good, others are asked for again', async () => {
    const hashed = await get('/assets/main-4f2a.js');
    expect(hashed.headers['cache-control']).toBe('public, max-age=31536000, immutable');
    expect((await get('/worker.js')).headers['cache-control']).toBe('no-cache');
  });

  it('go to all phones of a platoon behind one address, however many files that takes', async () => {
    let last = 0;
    for (let file = 0; file < 1500; file++) last = (await get('/assets/main-4f2a.js')).statusCode;
    expect(last).toBe(200);
  });

  it.each(['/assets/gone.js', '/tents', '/../package.json', '/%2e%2e/package.json'])(
    '%s is not there',
    async (url) => {
      const reply = await get(url);
      expect(reply.statusCode).toBeGreaterThanOrEqual(400);
      expect(reply.statusCode).toBeLessThan(500);
      expect(reply.body).not.toContain('spanwright"');
    },
  );

  it('come packed to browsers that take it', async () => {
    const packed = await get('/assets/main-4f2a.js', { 'accept-encoding': 'gzip, br' });
    expect(packed.headers['content-encoding']).toBe('gzip');
    expect(packed.rawPayload.length).toBeLessThan(script.length / 10);
    expect(gunzipSync(packed.rawPayload).toString()).toBe(script);
    const plain = await get('/assets/main-4f2a.js');
    expect(plain.headers['content-encoding']).toBeUndefined();
    expect(plain.body).toBe(script);
  });

  it('may run nothing but their own scripts and styles', async () => {
    const { headers } = await get('/');
    const policy = String(headers['content-security-policy']);
    expect(policy).toContain("default-src 'self'");
    expect(policy).not.toMatch(/unsafe|https:|\*/);
    expect(headers['referrer-policy']).toBe('no-referrer');
    expect(headers['x-content-type-options']).toBe('nosniff');
  });

  it('are not sent to HTTPS by a server that speaks HTTP', async () => {
    const { headers } = await get('/');
    expect(headers['strict-transport-security']).toBeUndefined();
    expect(String(headers['content-security-policy'])).not.toContain('upgrade-insecure-requests');
  });
});

describe('the API beside them', () => {
  it('never answers with a page', async () => {
    const reply = await get('/api/tents');
    expect(reply.statusCode).toBe(404);
    expect(reply.json()).toMatchObject({ code: 'route-unknown' });
  });

  it('is kept by no cache', async () => {
    expect((await get('/api/health')).headers['cache-control']).toBe('no-store');
  });
});
