import type { DatabaseSync } from '@photostructure/sqlite';

/** An open SQLite file; the interface is `node:sqlite`'s. */
export type Database = InstanceType<typeof DatabaseSync>;

/**
 * SQLite as Node carries it, or on a Node without it (20, and 22 before 22.13) the twin with the same interface.
 */
export async function sqliteModule(): Promise<{ readonly DatabaseSync: typeof DatabaseSync }> {
  const builtin = process.getBuiltinModule as (name: string) => unknown;
  const own = withoutWarning(() => builtin('node:sqlite')) as
    | { DatabaseSync: typeof DatabaseSync }
    | undefined;
  return own ?? (await import('@photostructure/sqlite'));
}

/** Node 22 and 24 warn that SQLite is experimental: nothing that a platoon can act on at every start. */
function withoutWarning<Value>(load: () => Value): Value {
  const { emitWarning } = process;
  process.emitWarning = () => {};
  try {
    return load();
  } finally {
    process.emitWarning = emitWarning;
  }
}
