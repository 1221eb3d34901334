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

  it('prints the schema of an order of work, with all that a scheduler keeps to', async () => {
    const { text } = await schemaOf('work');
    const work = {
      tasks: [
        {
          id: 'A',
          number: 1,
          name: 'Lift',
          phase: '',
          needs: [
            {
              anyOf: ['left'],
              people: { least: 2, usual: 4, most: 4 },
              with: [{ skill: 'weld', people: 1 }],
            },
          ],
          minutes: { quick: 5, likely: 5, slow: 5 },
          zones: ['home'],
          keepOff: false,
          opens: true,
          cautions: [],
          tools: [],
          loads: [],
          equipment: [{ id: 'jack', count: 2 }],
          daylight: true,
          fixed: { start: 30, crews: ['left'] },
        },
      ],
      links: [],
      crews: [
        {
          id: 'left',
          name: 'Left',
          people: 6,
          skills: [],
          attached: false,
          skilled: [{ skill: 'weld', people: 2 }],
          strength: [{ from: 240, people: 5 }],
          lent: [{ crew: 'right', people: 1, from: 60, to: 120 }],
          rests: [{ from: 180, to: 210 }],
        },
        { id: 'right', name: 'Right', people: 4, skills: [], attached: false },
      ],
      zones: [{ id: 'home', name: 'Home', bank: 'near' }],
      loads: [],
      equipment: [{ id: 'jack', name: 'Jack', count: 4 }],
      dark: { spells: [{ from: 300, to: 720 }], factor: 1.5 },
      crossing: 6,
    };
    expect(Value.Check(JSON.parse(text), work)).toBe(true);
    expect(Value.Check(JSON.parse(text), { ...work, weather: 'wet' })).toBe(false);
    const { text: build } = await schemaOf('build');
    expect(build).toContain('crossing');
  });

  it.each([[[]], [['bridge']], [['kit', 'ground']], [['constructor']]])(
    'shows how it is used after %j',
    async (args) => {
      const { code, err } = await schemaOf(...args);
      expect(code).toBe(2);
      expect(err).toEqual(['spanwright schema kit|ground|work|build']);
    },
  );
});
