import type { Database } from './sqliteModule.ts';

/**
 * Each step takes the file from one schema version to the next; `user_version` counts the steps taken.
 * A released step is never edited: a change is a new step.
 */
const steps: readonly string[] = [
  `
  CREATE TABLE build (
    build TEXT PRIMARY KEY,
    number INTEGER NOT NULL,
    hash TEXT NOT NULL
  ) STRICT;

  CREATE TABLE entry (
    build TEXT NOT NULL REFERENCES build (build),
    number INTEGER NOT NULL,
    text TEXT NOT NULL,
    hash TEXT NOT NULL,
    PRIMARY KEY (build, number)
  ) STRICT;

  CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry
  BEGIN SELECT RAISE (ABORT, 'the record is never rewritten'); END;

  CREATE TRIGGER entry_is_never_removed BEFORE DELETE ON entry
  BEGIN SELECT RAISE (ABORT, 'the record is never rewritten'); END;

  CREATE TABLE receipt (
    build TEXT NOT NULL REFERENCES build (build),
    id TEXT NOT NULL,
    request TEXT NOT NULL,
    status INTEGER NOT NULL,
    text TEXT NOT NULL,
    PRIMARY KEY (build, id)
  ) STRICT;

  CREATE TABLE link (
    id TEXT PRIMARY KEY,
    build TEXT REFERENCES build (build),
    role TEXT NOT NULL,
    name TEXT NOT NULL,
    crew TEXT,
    secret_hash TEXT NOT NULL UNIQUE,
    made_at TEXT NOT NULL,
    withdrawn_at TEXT
  ) STRICT;
  CREATE INDEX link_of_build ON link (build);

  CREATE TABLE told (
    place INTEGER PRIMARY KEY,
    build TEXT NOT NULL REFERENCES build (build),
    number INTEGER NOT NULL,
    at TEXT NOT NULL,
    text TEXT NOT NULL
  ) STRICT;
  CREATE INDEX told_of_build ON told (build, place);
  `,
];

/** The schema version that this program writes. */
const schemaVersion = steps.length;

function versionOf(database: Database): number {
  const row = database.prepare('PRAGMA user_version').get() as { user_version: number };
  return row.user_version;
}

function refuseNewer(version: number): void {
  if (version > schemaVersion) {
    throw new Error(
      `The data was written by a newer release (schema ${version}, this one knows ${schemaVersion}). Use the newer release.`,
    );
  }
}

/**
 * Brings a file to the newest schema, each step in its own transaction.
 * Throws when a newer program wrote the file: it is left as it is.
 */
export function migrate(database: Database): void {
  const version = versionOf(database);
  refuseNewer(version);
  for (let step = version; step < steps.length; step += 1) {
    database.exec(`BEGIN IMMEDIATE; ${steps[step]} PRAGMA user_version = ${step + 1}; COMMIT`);
  }
}

/** Throws unless the file has exactly this program's schema. */
export function refuseOtherSchema(database: Database): void {
  const version = versionOf(database);
  refuseNewer(version);
  if (version < schemaVersion) {
    throw new Error(
      `The data is of an older release (schema ${version}). Start the server once: it brings the data up to date.`,
    );
  }
}
