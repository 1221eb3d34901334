import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { loadKits } from '#server/loadKits.ts';
import { KitShelf, keepKitsIn, withOwnKits } from '#server/ownKits.ts';
import { places } from '#server/places.ts';

const folder = mkdtempSync(join(tmpdir(), 'spanwright-own-kits-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const shipped = await loadKits(places.kits);
if (!shipped.ok) throw new Error(JSON.stringify(shipped.reason));
const kits = shipped.value;
const heron = kits.get('heron')!.kit;

describe('own kits', () => {
  it('are files that are there again when the server is', async () => {
    const own = join(folder, 'there-again');
    expect(await withOwnKits(kits, own)).toEqual({ kits, faults: [] });
    const added = await new KitShelf(new Map(kits), keepKitsIn(own)).add({
      ...heron,
      name: 'heron-own',
    });
    expect(readdirSync(own)).toEqual(['heron-own.json']);
    const again = await withOwnKits(kits, own);
    expect(again.kits.get('heron-own')).toEqual(added.ok && added.value);
    expect([...again.kits.keys()]).toEqual(expect.arrayContaining([...kits.keys()]));
  });

  it('never stand in for a kit of the program', async () => {
    const own = join(folder, 'same-name');
    const shelf = new KitShelf(new Map(kits), keepKitsIn(own));
    expect(await shelf.add(heron)).toMatchObject({ ok: false, reason: { code: 'kit-exists' } });
    expect(existsSync(own)).toBe(false);
    await keepKitsIn(own)('heron', JSON.stringify({ ...heron, title: 'Another' }));
    expect((await withOwnKits(kits, own)).kits.get('heron')!.kit.title).toBe(heron.title);
  });

  it('that are no good are named, and the server comes up with the kits of the program', async () => {
    const own = join(folder, 'broken');
    await keepKitsIn(own)('good', JSON.stringify({ ...heron, name: 'good' }));
    writeFileSync(join(own, 'half.json'), '{"format": "spanwright-kit"');
    const found = await withOwnKits(kits, own);
    expect(found.faults.map(({ file }) => file)).toContain('half.json');
    expect(found.kits).toEqual(kits);
  });

  it('of one name asked for twice at once are added once', async () => {
    const shelf = new KitShelf(new Map(kits), keepKitsIn(join(folder, 'twice')));
    const both = await Promise.all([1, 2].map(() => shelf.add({ ...heron, name: 'twin' })));
    expect(both.map(({ ok }) => ok).sort()).toEqual([false, true]);
  });

  it('half written by a server that was killed are not there', async () => {
    const own = join(folder, 'killed');
    await keepKitsIn(own)('whole', JSON.stringify({ ...heron, name: 'whole' }));
    writeFileSync(join(own, 'half.json.part'), '{"form');
    expect([...(await withOwnKits(kits, own)).kits.keys()]).toContain('whole');
  });
});
