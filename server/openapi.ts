import swagger from '@fastify/swagger';
import type { TSchema } from 'typebox';
import { Bridge } from '#domain/bridge/bridge.ts';
import { Ground } from '#domain/bridge/ground.ts';
import { Fault } from '#domain/fault.ts';
import { Review } from '#domain/forecast/after/review.ts';
import { Doubt } from '#domain/forecast/doubt/doubt.ts';
import { Forecast } from '#domain/forecast/forecast.ts';
import { Kit } from '#domain/kit/kit.ts';
import { Author } from '#domain/progress/command.ts';
import { Breach } from '#domain/progress/entry.ts';
import { BuildState, TaskState } from '#domain/progress/state.ts';
import { Plan } from '#domain/schedule/plan.ts';
import { Change } from '#domain/tasks/change.ts';
import { Work } from '#domain/tasks/work.ts';
import * as wire from '#shared/wire.ts';
import { wireBodies } from '#shared/wireBodies.ts';
import * as wireBridges from '#shared/wireBridges.ts';
import * as wireBuilds from '#shared/wireBuilds.ts';
import * as wireForecast from '#shared/wireForecast.ts';
import * as wireReview from '#shared/wireReview.ts';
import type { App } from './site.ts';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

const bodyNames = Object.entries(wireBodies).map(([kind, schema]): [string, TSchema] => [
  `body.${kind}`,
  schema,
]);

/** Schemas that the document names; wherever one stands inside another, it is referred to. */
const named: readonly (readonly [string, TSchema])[] = [
  ...Object.entries(wire),
  ...Object.entries(wireBuilds),
  ...Object.entries(wireForecast),
  ...Object.entries(wireReview),
  ...Object.entries(wireBridges),
  ...Object.entries({ Author, Breach, Bridge, BuildState, Change, Fault, Forecast, Ground, Kit }),
  ...Object.entries({ Doubt, Review }),
  ...Object.entries({ Plan, TaskState, Work }),
  ...bodyNames,
];

/** Collects the routes registered after it for the OpenAPI document. */
export async function describeApi(app: App, version: string): Promise<void> {
  await app.register(swagger, {
    // JSON Schema 2020-12, which OpenAPI 3.1 speaks, knows `const`.
    convertConstToEnum: false,
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Spanwright',
        version,
        description:
          'Planning aid: the manual of the equipment on site, local codes and the qualified person in charge decide.',
        license: { name: 'Apache-2.0', identifier: 'Apache-2.0' },
      },
      components: { securitySchemes: { link: { type: 'http', scheme: 'bearer' } } },
      security: [{ link: [] }],
    },
    transformObject: (document) =>
      'openapiObject' in document
        ? nameSchemas(withRefusals(document.openapiObject))
        : document.swaggerObject,
  });
}

/** GET /api/openapi.json */
export function openApiRoute(app: App): void {
  app.get(
    '/api/openapi.json',
    { config: { callers: 'anyone' }, schema: { summary: 'This document', hide: true } },
    async () => app.swagger(),
  );
}

/** Any route may refuse: the link, the size, the rate. */
function withRefusals<Document extends { paths?: object | undefined }>(
  document: Document,
): Document {
  const refused = {
    description: 'A refusal with its code and what to do',
    content: { 'application/json': { schema: wire.RefusalReply } },
  };
  for (const path of Object.values(document.paths ?? {}) as Record<
    string,
    { responses: object }
  >[]) {
    for (const operation of Object.values(path)) {
      operation.responses = { ...operation.responses, default: refused };
    }
  }
  return document;
}

/** Puts each named schema once among the components, and a reference wherever it stood. */
function nameSchemas<Document extends { components?: object | undefined }>(
  document: Document,
): Document {
  const names = new Map<string, string>();
  for (const [name, schema] of named) names.set(JSON.stringify(schema), name);

  const refer = (node: Json, own?: string): Json => {
    if (typeof node !== 'object' || node === null) return node;
    const name = names.get(JSON.stringify(node));
    if (name !== undefined && name !== own) return { $ref: `#/components/schemas/${name}` };
    if (Array.isArray(node)) return node.map((item) => refer(item));
    return Object.fromEntries(Object.entries(node).map(([key, value]) => [key, refer(value)]));
  };

  const schemas = Object.fromEntries(
    named.map(([name, schema]) => [name, refer(JSON.parse(JSON.stringify(schema)) as Json, name)]),
  );
  const referred = refer(JSON.parse(JSON.stringify(document)) as Json) as unknown as Document;
  return { ...referred, components: { ...referred.components, schemas } };
}
