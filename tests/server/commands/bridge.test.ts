import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { run } from '#server/commands/bridge.ts';

const read = (path: string) => readFile(new URL(`../../../${path}`, import.meta.url), 'utf8');
const larchFord = await read('domain/kits/larchFord.json');
const heron = await read('domain/kits/heron.json');
const files: Record<string, string> = {
  'ground.json': larchFord,
  'wide.json': JSON.stringify({ ...JSON.parse(larchFord), gap: 60 }),
  'narrow.json': JSON.stringify({ ...JSON.parse(larchFord), roomBehind: 20, loadClass: 50 }),
  'faulty.json': await read('tests/corpus/grounds/faulty.json'),
  'mere.json': await read('tests/corpus/grounds/reedMere.json'),
  'kit.json': heron,
  'foot.json': await read('tests/corpus/kits/footbridge.json'),
};

async function spanwright(...args: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const code = await run(args, {
    out: (line) => void out.push(line),
    err: (line) => void err.push(line),
    readFile: async (path) => {
      const text = files[path];
      if (text === undefined) throw new Error(`no such file: ${path}`);
      return text;
    },
  });
  return { code, out, err };
}

describe('spanwright bridge', () => {
  it('describes the bridge that answers a ground, and that the manual decides', async () => {
    const { code, out, err } = await spanwright('ground.json', '--kit', 'heron');
    expect([code, err]).toEqual([0, []]);
    expect(out[0]).toBe('Larch Ford: Heron, 33.0 m, class 30 (invented kit, not for use)');
    expect(out).toContain(
      'Move 5: after 11 bays, 4 of them decked, 8.0 m to 32.0 m, tip lands, balance 2.3 m behind the front rollers, tip down 0.5 m.',
    );
    expect(out.at(-1)).toMatch(/^Planning aid; the manual of the equipment on site/);
  });

  it('prints the whole bridge as JSON, with the hash of the very kit file', async () => {
    const { code, out } = await spanwright('ground.json', '--kit', 'kit.json', '--json');
    expect(code).toBe(0);
    const bridge = JSON.parse(out.join('\n'));
    expect(bridge).toMatchObject({ bays: 11, nose: 6, landsAt: 32, roomNeeded: 36 });
    expect(bridge.kit.hash).toBe(createHash('sha256').update(heron, 'utf8').digest('hex'));
  });

  it('gives each stage its statics, the choice and the stores', async () => {
    const { out } = await spanwright('ground.json', '--kit', 'heron', '--json');
    const bridge = JSON.parse(out.join('\n'));
    expect(bridge.stages).toHaveLength(7);
    for (const stage of bridge.stages) {
      const { reactions, kilograms } = stage;
      const sum = reactions.reduce((all: number, one: { newtons: number }) => all + one.newtons, 0);
      expect(sum).toBeCloseTo(kilograms * 9.80665, 3);
    }
    const landing = bridge.stages[4];
    expect(landing).toMatchObject({ stage: 5, bays: 11, nose: 6, moved: 32, lands: true });
    expect(landing.margin).toBeCloseTo(2.34, 2);
    expect(landing.centreOfGravity).toBeCloseTo(-2.34, 2);
    expect(landing.tipSag).toBeGreaterThan(0.2);
    expect(bridge.stages[6].tipSag).toBeNull();
    expect(bridge.choice.fitting[0]).toMatchObject({ bays: 11, nose: 6, against: null });
    const packed = bridge.stores.packing.trucks.reduce(
      (all: number, { kilograms }: { kilograms: number }) => all + kilograms,
      0,
    );
    expect(packed).toBeCloseTo(bridge.stores.kilograms, 6);
    expect(bridge.rescue.buoys).toBe(2);
    expect(bridge.hangsOn).toContain('near.strength');
  });

  it('says in words what it chose among, and what it hangs on', async () => {
    const { out } = await spanwright('ground.json', '--kit', 'heron');
    expect(out.filter((line) => line.startsWith('Advised: 11 bays'))).toHaveLength(1);
    expect(out.filter((line) => line.startsWith('Other: 12 bays'))).toHaveLength(1);
    expect(out.join('\n')).toContain('2 ring buoys, each with 27.4 m of line');
  });

  it('names what nobody has measured', async () => {
    const { code, out } = await spanwright('mere.json', '--kit', 'foot.json');
    expect(code).toBe(0);
    expect(out.filter((line) => line.includes('not measured'))).toHaveLength(5);
    expect(out.join('\n')).not.toContain('nose');
  });

  it('prints each limit that binds and exits with 2', async () => {
    const wide = await spanwright('wide.json', '--kit', 'heron');
    expect([wide.code, wide.out]).toEqual([2, []]);
    expect(wide.err).toHaveLength(1);
    const narrow = await spanwright('narrow.json', '--kit', 'heron');
    expect(narrow.err).toHaveLength(2);
  });

  it('prints the faults of the ground and of the kit at once', async () => {
    const { code, err } = await spanwright('faulty.json', '--kit', 'heroin');
    expect(code).toBe(2);
    expect(err).toContain('faulty.json, /gap: found -3, expected a number from 1 to 200');
    expect(err.at(-1)).toBe(
      '--kit: found heroin, expected heron, or the path of a kit file (.json)',
    );
  });

  it('says when a file is not there', async () => {
    const { code, err } = await spanwright('none.json', '--kit', 'none-either.json');
    expect(code).toBe(2);
    expect(err).toHaveLength(2);
  });

  it.each([[[]], [['ground.json']], [['ground.json', '--kit']], [['a', 'b', '--kit', 'heron']]])(
    'shows how it is used after %j',
    async (args) => {
      const { code, err } = await spanwright(...args);
      expect(code).toBe(2);
      expect(err.at(-1)).toBe('spanwright bridge GROUND.json --kit NAME [--json]');
    },
  );
});
