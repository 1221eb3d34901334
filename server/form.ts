import type { Static, TSchema } from 'typebox';
import { Compile } from 'typebox/compile';
import type { Fault } from '#domain/fault.ts';
import { schemaFaults } from '#domain/kit/schemaFaults.ts';
import { bad, good, type Result } from '#domain/result.ts';

/** More would not be read. */
const mostFaults = 20;

/** Makes a reader for one schema: nothing is converted, filled in or dropped; faults come back with their places. */
export function formReader<Schema extends TSchema>(
  schema: Schema,
): (value: unknown) => Result<Static<Schema>, Fault[]> {
  const compiled = Compile(schema);
  return (value) =>
    compiled.Check(value)
      ? good(value as Static<Schema>)
      : bad(schemaFaults(schema, value).slice(0, mostFaults));
}
