import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { loadKits } from '#server/loadKits.ts';
import { places } from '#server/places.ts';

const folder = mkdtempSync(join(tmpdir(), 'spanwright-kits-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

it('the kits of the program can all be read, and the grounds beside them are no kits', async () => {
  const kits = await loadKits(places.kits);
  expect(kits.ok && [...kits.value.keys()]).toContain('heron');
  expect(kits.ok && [...kits.value.values()].every(({ kit }) => kit.notForUse)).toBe(true);
});

it('a broken kit is refused with its file, and no other kit is served without it', async () => {
  writeFileSync(join(folder, 'broken.json'), '{"format": "spanwright-kit", "version": 1');
  writeFileSync(join(folder, 'poor.json'), '{"format": "spanwright-kit", "version": 1}');
  const kits = await loadKits(folder);
  const files = kits.ok ? [] : kits.reason.map(({ file }) => file);
  expect(new Set(files)).toEqual(new Set(['broken.json', 'poor.json']));
});
