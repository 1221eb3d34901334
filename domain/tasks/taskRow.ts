import {
  readEstimate,
  readId,
  readIds,
  readMinutes,
  readName,
  readNeeds,
  readYes,
} from './tableCells.ts';
import type { TableRow } from './tableFile.ts';
import { readCounts } from './tableLists.ts';
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
  'equipment',
  'light',
  'fixed',
  'with',
] as const;

function readLight(row: TableRow): boolean {
  const text = row.cell('light').toLowerCase();
  if (text !== 'day' && text !== 'any' && text !== '') {
    row.fault('light', 'day, or any');
  }
  return text === 'day';
}

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
  const equipment = readCounts(row, 'equipment', 1000);
  const daylight = readLight(row);
  const fixed = readMinutes(row, 'fixed', 0, undefined);
  const skilled = readCounts(row, 'with', 500).map(({ id: skill, count: people }) => ({
    skill,
    people,
  }));

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
  const [need, ...others] = needs ?? [];
  const short = need && skilled.find(({ people }) => people > need.people.usual);
  if (short) {
    row.fault('with', `at most the ${need.people.usual} people of the task`);
  }
  if (others.length > 0 && skilled.length > 0) {
    row.fault('with', 'nothing for a joint task');
  }
  if (id === null || needs === null || minutes === null) {
    return null;
  }
  const task = {
    id,
    name,
    phase: '',
    needs: skilled.length > 0 ? needs.map((one) => ({ ...one, with: skilled })) : needs,
    minutes,
    zones,
    keepOff,
    ...(hold ? { hold: { measures: [], lapsesOn: [], redo: [] } } : {}),
    opens,
    cautions: [],
    tools: [],
    loads: [],
    ...(equipment.length > 0 ? { equipment } : {}),
    ...(daylight ? { daylight } : {}),
    ...(typeof fixed === 'number' ? { fixed: { start: fixed } } : {}),
  };
  return { task, after };
}
