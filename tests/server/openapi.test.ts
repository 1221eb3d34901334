import { beforeAll, describe, expect, it } from 'vitest';
import { wireKinds } from '#shared/wireBodies.ts';
import { type TestServer, testServer } from '#tests/support/server.ts';

type Operation = {
  readonly summary?: string;
  readonly parameters?: readonly {
    readonly name: string;
    readonly in: string;
    readonly required?: boolean;
  }[];
  readonly requestBody?: {
    readonly content: Readonly<Record<string, { readonly schema: object }>>;
  };
  readonly responses: Readonly<Record<string, { readonly description: string }>>;
  readonly security?: readonly object[];
};

type Document = {
  readonly openapi: string;
  readonly info: { readonly title: string; readonly version: string };
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
  readonly components: { readonly schemas: Readonly<Record<string, object>> };
};

let server: TestServer;
let document: Document;
let operations: (readonly [string, string, Operation])[];
beforeAll(async () => {
  server = await testServer();
  document = (await server.ask<Document>('GET', '/api/openapi.json', null)).json;
  operations = Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => [path, method, operation] as const),
  );
});

function referencesIn(node: unknown): string[] {
  if (typeof node !== 'object' || node === null) return [];
  const own = '$ref' in node && typeof node.$ref === 'string' ? [node.$ref] : [];
  return [...own, ...Object.values(node).flatMap(referencesIn)];
}

// Rules of the OpenAPI Specification 3.1.0: sections "OpenAPI Object", "Paths Object", "Operation Object",
// "Parameter Object", "Components Object" and "Reference Object".
describe('the OpenAPI document', () => {
  it('is of version 3.1 and says what it describes', () => {
    expect(document.openapi).toMatch(/^3\.1\.\d+$/);
    expect(document.info).toMatchObject({ title: 'Spanwright', version: '0.0.0-test' });
  });

  it('refers only to what is in it', () => {
    const references = referencesIn(document);
    expect(references.length).toBeGreaterThan(50);
    for (const reference of references) {
      const [, name = ''] = /^#\/components\/schemas\/([A-Za-z0-9._-]+)$/.exec(reference) ?? [];
      expect(document.components.schemas, reference).toHaveProperty([name]);
    }
  });

  it('declares each part of a path that varies, and requires it', () => {
    for (const [path, method, { parameters = [] }] of operations) {
      const varying = [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => name);
      const declared = parameters.filter((parameter) => parameter.in === 'path');
      expect(declared.map(({ name }) => name).sort(), `${method} ${path}`).toEqual(varying.sort());
      expect(declared.every(({ required }) => required === true)).toBe(true);
    }
  });

  it('gives every operation a summary, a reply and a refusal', () => {
    expect(operations.length).toBeGreaterThan(15);
    for (const [path, method, { summary, responses }] of operations) {
      expect(summary, `${method} ${path}`).toBeTruthy();
      expect(Object.keys(responses).some((status) => status.startsWith('2'))).toBe(true);
      expect(responses).toHaveProperty('default');
      for (const { description } of Object.values(responses)) expect(description).toBeTruthy();
    }
  });

  it('asks for a link everywhere but where anyone may look', () => {
    const open = operations.filter(([, , { security }]) => security?.length === 0);
    expect(open.map(([path]) => path)).toEqual(['/api/health']);
  });

  it('names what clients build on, each once', () => {
    const names = ['BuildState', 'CommandRequest', 'DeltaFrame', 'Plan', 'Receipt', 'Snapshot'];
    for (const name of names) expect(document.components.schemas).toHaveProperty([name]);
    expect(Object.keys(document.components.schemas)).not.toContain('def-0');
    const command = document.paths['/api/builds/{build}/commands']?.post;
    expect(command?.requestBody?.content['application/json']?.schema).toEqual({
      $ref: '#/components/schemas/CommandRequest',
    });
    expect(JSON.stringify(document.components.schemas.Snapshot)).toContain('BuildState');
  });

  it('has the body of every command', () => {
    for (const kind of wireKinds) {
      expect(document.components.schemas).toHaveProperty([`body.${kind}`]);
    }
  });
});
