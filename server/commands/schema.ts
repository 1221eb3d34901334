import type { TSchema } from 'typebox';
import { Ground } from '#domain/bridge/ground.ts';
import { Kit } from '#domain/kit/kit.ts';
import { Work } from '#domain/tasks/work.ts';
import { OpenRequest } from '#shared/wireBuilds.ts';
import type { CommandIo } from './io.ts';

/** The files that people write themselves, by the name they ask for. */
const schemas: Readonly<Record<string, { readonly title: string; readonly schema: TSchema }>> = {
  kit: { title: 'Kit file of Spanwright', schema: Kit },
  ground: { title: 'Ground file of Spanwright', schema: Ground },
  work: { title: 'Order of work file of Spanwright', schema: Work },
  build: { title: 'Build file of Spanwright', schema: OpenRequest },
};

/**
 * `spanwright schema kit|ground|work|build`: prints the JSON Schema (2020-12) of a file that people write. Resolves to the
 * exit code: 0 done, 2 wrong arguments.
 */
export async function run(args: string[], io: CommandIo): Promise<number> {
  const [name = '', ...more] = args;
  const found = Object.hasOwn(schemas, name) && more.length === 0 ? schemas[name] : undefined;
  if (!found) {
    io.err(`spanwright schema ${Object.keys(schemas).join('|')}`);
    return 2;
  }
  const { title, schema } = found;
  const whole = { $schema: 'https://json-schema.org/draft/2020-12/schema', title, ...schema };
  io.out(JSON.stringify(whole, null, 2));
  return 0;
}
