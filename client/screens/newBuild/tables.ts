import type { Fault } from '#domain/fault.ts';
import type { Result } from '#domain/result.ts';
import { readTables } from '#domain/tasks/tables.ts';
import type { Work } from '#domain/tasks/work.ts';
import type { BuildSource } from '#shared/wireBuilds.ts';

/** The texts of the three tables; empty where there is none. */
export type TypedTables = {
  readonly tasks: string;
  readonly links: string;
  readonly crews: string;
};

export const noTables: TypedTables = { tasks: '', links: '', crews: '' };

/** Reads the tables as the server will, so that every fault stands here before anything is sent. */
export function readTyped({ tasks, links, crews }: TypedTables): Result<Work, Fault[]> {
  return readTables({
    tasks: { file: 'tasks', text: tasks },
    ...(links.trim() !== '' && { links: { file: 'links', text: links } }),
    ...(crews.trim() !== '' && { crews: { file: 'crews', text: crews } }),
  });
}

export function tablesSource({ tasks, links, crews }: TypedTables): BuildSource {
  return {
    kind: 'tables',
    tasks,
    ...(links.trim() !== '' && { links }),
    ...(crews.trim() !== '' && { crews }),
  };
}
