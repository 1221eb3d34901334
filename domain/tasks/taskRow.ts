import { readEstimate, readId, readIds, readName, readNeeds, readYes } from './tableCells.ts';
import type { TableRow } from './tableFile.ts';
import type { Task } from './task.ts';

export const taskColumns = [
  'task',
  'name',
  'crews',
  'people',
  'quick',
  'likely',
  'slow',
  'after',
  'zones',
  'keepoff',
  'hold',
  'opens',
] as const;

/** What a row is checked against: the rest of its table, and the crew table where there is one that could be read. */
export type Known = {
  /** The first row of each task id. */
  readonly rowOf: ReadonlyMap<string, number>;
  /** Whether `rowOf` has all ids of the table. */
  readonly complete: boolean;
  readonly crews: ReadonlySet<string> | null;
  /** Rows that open, as they are read. */
  readonly opened: number[];
};

/** A task without its number, and the ids it comes after. */
export type TaskRow = { readonly task: Omit<Task, 'number'>; readonly after: readonly string[] };

/** Reads one row of a task table; null when a cell without which there is no task is at fault. */
export function readTaskRow(row: TableRow, known: Known): TaskRow | null {
  const id = readId(row, 'task');
  const first = known.rowOf.get(row.cell('task'));
  if (id !== null && first !== row.row) {
    row.fault('task', `an id of its own, not that of row ${first}`);
  }
  const name = readName(row, 'name', id ?? '', 120);
  const needs = readNeeds(row);
  const minutes = readEstimate(row);
  const after = readIds(row, 'after');
  const zones = readIds(row, 'zones');
  const keepOff = readYes(row, 'keepoff');
  const hold = readYes(row, 'hold');
  const opens = readYes(row, 'opens');

  for (const other of after) {
    if (other === id) {
      row.fault('after', 'another task than itself', other);
    } else if (known.complete && !known.rowOf.has(other)) {
      row.fault('after', 'a task of this table', other);
    }
  }
  for (const crew of needs?.flatMap(({ anyOf }) => anyOf) ?? []) {
    if (known.crews && !known.crews.has(crew)) {
      row.fault('crews', 'a crew of the crew table', crew);
    }
  }
  if (opens && known.opened.push(row.row) > 1) {
    row.fault('opens', `one task that opens, and row ${known.opened[0]} does`);
  }
  if (id === null || needs === null || minutes === null) {
    return null;
  }
  const task = {
    id,
    name,
    phase: '',
    needs,
    minutes,
    zones,
    keepOff,
    ...(hold ? { hold: { measures: [], lapsesOn: [], redo: [] } } : {}),
    opens,
    cautions: [],
    tools: [],
    loads: [],
  };
  return { task, after };
}
