import { Type } from 'typebox';
import { describe, expect, it } from 'vitest';
import { schemaFaults } from '#domain/kit/schemaFaults.ts';

const schema = Type.Object(
  {
    name: Type.String({ minLength: 1, maxLength: 9 }),
    count: Type.Integer({ minimum: 1 }),
    depth: Type.Union([Type.Number({ maximum: 60 }), Type.Null()]),
    kind: Type.Union([Type.Literal('made'), Type.Literal('natural')]),
    rows: Type.Array(Type.Object({ 'a/b~c': Type.Number() }, { additionalProperties: false })),
    spare: Type.Optional(Type.Boolean()),
  },
  { additionalProperties: false },
);
const fitting = { name: 'n', count: 1, depth: null, kind: 'made', rows: [{ 'a/b~c': 1 }] };

describe('faults of a form', () => {
  it('finds none in what fits, with or without optional fields', () => {
    expect(schemaFaults(schema, fitting)).toEqual([]);
    expect(schemaFaults(schema, { ...fitting, depth: 4, spare: true })).toEqual([]);
  });

  it('finds every one of many, far more than a library would', () => {
    const rows = Array.from({ length: 30 }, () => ({ 'a/b~c': 'x' }));
    expect(schemaFaults(schema, { ...fitting, rows })).toHaveLength(30);
  });

  it('names an unknown field and the fields there are', () => {
    const [fault] = schemaFaults(schema, { ...fitting, colour: 'red' });
    expect(fault).toEqual({
      path: '/colour',
      found: 'an unknown field',
      expected: 'one of name, count, depth, kind, rows, spare',
    });
  });

  it('names a field that is missing', () => {
    const { count, ...rest } = fitting;
    expect(count).toBe(1);
    expect(schemaFaults(schema, rest)).toEqual([
      { path: '/count', found: 'nothing', expected: 'a whole number of at least 1' },
    ]);
  });

  it('says what was found and what was expected in words', () => {
    const faults = schemaFaults(schema, { ...fitting, name: '', count: 1.5, depth: 61, kind: 'x' });
    expect(faults.map(({ path, found, expected }) => [path, found, expected])).toEqual([
      ['/name', '""', 'a text from 1 to 9 characters'],
      ['/count', '1.5', 'a whole number of at least 1'],
      ['/depth', '61', 'a number of at most 60'],
      ['/kind', '"x"', 'one of "made", "natural"'],
    ]);
  });

  it('escapes keys in paths as RFC 6901 wants', () => {
    const [fault] = schemaFaults(schema, { ...fitting, rows: [{ 'a/b~c': null }] });
    expect(fault?.path).toBe('/rows/0/a~1b~0c');
  });

  it.each([[null], [[]], ['text'], [undefined]])('refuses %j where an object belongs', (json) => {
    expect(schemaFaults(schema, json)).toHaveLength(1);
  });

  it('shortens what is long', () => {
    const [fault] = schemaFaults(schema, { ...fitting, kind: 'x'.repeat(500) });
    expect(fault?.found.length).toBeLessThan(70);
  });
});
