import { readFile } from 'node:fs/promises';
import Value from 'typebox/value';
import { describe, expect, it } from 'vitest';
import { run } from '#server/commands/schema.ts';

async function schemaOf(...args: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const code = await run(args, {
    out: (line) => void out.push(line),
    err: (line) => void err.push(line),
    readFile: async () => '',
  });
  return { code, text: out.join('\n'), err };
}

const read = async (path: string) =>
  JSON.parse(await readFile(new URL(`../../../${path}`, import.meta.url), 'utf8'));

describe('spanwright schema', () => {
  it.each([
    ['kit', 'domain/kits/heron.json'],
    ['ground', 'domain/kits/larchFord.json'],
  ])(
    'prints the schema of a %s, which takes %s and nothing with a field that is unknown',
    async (name, path) => {
      const { code, text } = await schemaOf(name);
      expect(code).toBe(0);
      const schema = JSON.parse(text);
      expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
      const file = await read(path);
      expect(Value.Check(schema, file)).toBe(true);
      expect(Value.Check(schema, { ...file, colour: 'green' })).toBe(false);
    },
  );

  it('prints the schema of a build: what opens one', async () => {
    const { text } = await schemaOf('build');
    const build = {
      id: '0123456789abcdef0123456789abcdef',
      name: 'Larch Ford',
      unit: '1 Troop',
      start: '2026-05-01T11:30:00.000Z',
      askedFor: null,
      zone: 'UTC',
      confidence: 0.9,
      source: { kind: 'empty' },
    };
    expect(Value.Check(JSON.parse(text), build)).toBe(true);
    expect(Value.Check(JSON.parse(text), { ...build, source: { kind: 'guess' } })).toBe(false);
  });

  it.each([[[]], [['bridge']], [['kit', 'ground']], [['constructor']]])(
    'shows how it is used after %j',
    async (args) => {
      const { code, err } = await schemaOf(...args);
      expect(code).toBe(2);
      expect(err).toEqual(['spanwright schema kit|ground|build']);
    },
  );
});
