import type { Fault } from '../fault.ts';
import { mostTasks } from './checkWork.ts';
import { readCsv } from './csv.ts';

/** A table as given: `file` is its name for faults. */
export type TableFile = { readonly file: string; readonly text: string };

/** One row of a table by column. Reading a column that the table does not have gives the empty text. */
export type TableRow = {
  readonly row: number;
  /** It has as many cells as the header; otherwise only its first cells can be trusted to be in place. */
  readonly whole: boolean;
  cell(column: string): string;
  /** Notes a fault of this row in `column`. `found` is the cell unless given. */
  fault(column: string, expected: string, found?: string): void;
};

/** `complete` is false when rows are missing here that the file may have: what is not found may still be there. */
export type TableRows = { readonly rows: readonly TableRow[]; readonly complete: boolean };

const nothingRead: TableRows = { rows: [], complete: false };

/**
 * Splits a table into rows by the names in its header, in any order. Wrong headers, quotes out of place, rows with too
 * few or too many cells and tables of more than 20,000 rows are added to `faults`.
 */
export function tableRows(
  table: TableFile,
  known: readonly string[],
  required: readonly string[],
  faults: Fault[],
): TableRows {
  const { file } = table;
  if (table.text.includes('\uFFFD')) {
    faults.push({ file, found: 'letters that cannot be read', expected: 'a file saved as UTF-8' });
    return nothingRead;
  }
  const csv = readCsv(file, table.text);
  faults.push(...csv.faults);
  const [header, ...body] = csv.rows;
  if (!header) {
    faults.push({ file, row: 1, found: 'nothing', expected: `a header: ${known.join(',')}` });
    return nothingRead;
  }
  if (body.length > mostTasks) {
    faults.push({ file, found: `${body.length} rows`, expected: `at most ${mostTasks} rows` });
    return nothingRead;
  }
  const columns = header.cells.map((name) => name.toLowerCase());
  for (const [at, column] of columns.entries()) {
    const place = { file, row: header.row, column: column || `column ${at + 1}` };
    if (!known.includes(column)) {
      const found = header.cells[at] || 'a column without a name';
      faults.push({ ...place, found, expected: `one of ${known.join(', ')}` });
    } else if (columns.indexOf(column) !== at) {
      faults.push({ ...place, found: `${column} twice`, expected: 'each column once' });
    }
  }
  const missing = required.filter((column) => !columns.includes(column));
  for (const column of missing) {
    const expected = `the column ${column}`;
    faults.push({ file, row: header.row, column, found: 'no such column', expected });
  }
  // Without a required column every row would be a fault; with one too many the rows can still be told theirs.
  if (missing.length > 0) {
    return nothingRead;
  }
  const rows = body.map(({ row, cells }): TableRow => {
    const whole = cells.length === columns.length;
    if (!whole) {
      const expected = `${columns.length} cells, as many as the header`;
      faults.push({ file, row, found: `${cells.length} cells`, expected });
    }
    const cell = (column: string) => cells[columns.indexOf(column)] ?? '';
    const fault = (column: string, expected: string, found?: string) => {
      faults.push({ file, row, column, found: found ?? (cell(column) || 'nothing'), expected });
    };
    return { row, whole, cell, fault };
  });
  return { rows, complete: csv.faults.length === 0 };
}
