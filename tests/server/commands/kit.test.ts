import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { run } from '#server/commands/kit.ts';

function fakeIo(files: Record<string, string>) {
  const out: string[] = [];
  const err: string[] = [];
  const io = {
    out: (line: string) => void out.push(line),
    err: (line: string) => void err.push(line),
    readFile: async (path: string) => {
      const text = files[path];
      if (text === undefined) throw new Error(`no such file: ${path}`);
      return text;
    },
  };
  return { io, out, err };
}

const heron = await readFile(new URL('../../../domain/kits/heron.json', import.meta.url), 'utf8');

describe('spanwright kit check', () => {
  it('says that a kit has no faults and what it is', async () => {
    const { io, out, err } = fakeIo({ 'mine.json': heron });
    expect(await run(['check', 'mine.json'], io)).toBe(0);
    expect(out).toEqual([
      'mine.json: no faults. Heron, launched, 3 bays (9.0 m) to 15 bays (45.0 m), not for use.',
    ]);
    expect(err).toEqual([]);
  });

  it('notes what is heavy for its carriers without refusing it', async () => {
    const kit = JSON.parse(heron);
    const panel = kit.parts.find(({ id }: { id: string }) => id === 'girder-panel');
    const brace = kit.parts.find(({ id }: { id: string }) => id === 'floor-beam');
    // 4 x 230 + 2 x 40 weighs what 4 x 170 + 2 x 160 did.
    panel.mass = 230;
    brace.mass = 40;
    const { io, out } = fakeIo({ 'mine.json': JSON.stringify(kit) });
    expect(await run(['check', 'mine.json'], io)).toBe(0);
    expect(out[1]).toMatch(/^Note: Girder panel: 230 kg by 6 people/);
  });

  it('prints every fault on its own line with file and path', async () => {
    const kit = { ...JSON.parse(heron), version: 7, colour: 'green', title: '' };
    const { io, out, err } = fakeIo({ 'mine.json': JSON.stringify(kit) });
    expect(await run(['check', 'mine.json'], io)).toBe(2);
    expect(out).toEqual([]);
    expect(err).toHaveLength(3);
    expect(err).toContain('mine.json, /version: found 7, expected 1');
  });

  it('says when a file cannot be read or is not JSON', async () => {
    const { io, err } = fakeIo({ 'half.json': '{"format":' });
    expect(await run(['check', 'none.json'], io)).toBe(2);
    expect(await run(['check', 'half.json'], io)).toBe(2);
    expect(err[0]).toBe(
      'none.json: found no such file: none.json, expected a file that can be read',
    );
    expect(err[1]).toMatch(/^half\.json: found .*, expected JSON$/);
  });

  it.each([[[]], [['check']], [['bend', 'x.json']], [['check', 'a.json', 'b.json']]])(
    'shows how it is used after %j',
    async (args) => {
      const { io, err } = fakeIo({});
      expect(await run(args, io)).toBe(2);
      expect(err).toEqual(['spanwright kit check FILE']);
    },
  );
});
