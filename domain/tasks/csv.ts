import type { Fault } from '../fault.ts';

/** One record of a table: its row as a spreadsheet counts it (the header is row 1) and its cells, trimmed. */
export type CsvRow = { readonly row: number; readonly cells: readonly string[] };

/**
 * Reads comma-separated values as RFC 4180 has them: cells in double quotes may hold commas, line breaks and doubled
 * quotes; lines end with CRLF or LF; a byte order mark is skipped. Blank lines count as rows and are left out.
 * A quote out of place is a fault of its row, and that row is left out.
 */
export function readCsv(file: string, text: string): { rows: CsvRow[]; faults: Fault[] } {
  const rows: CsvRow[] = [];
  const faults: Fault[] = [];
  // One cell and what ends it: quoted, or plain up to a comma or a line end.
  const cell = /(?:"([^"]*(?:""[^"]*)*)"|([^",\r\n]*))(,|\r\n|\n|\r|$)/y;
  let at = text.startsWith('\uFEFF') ? 1 : 0;
  let row = 1;
  let cells: string[] = [];
  while (at <= text.length) {
    cell.lastIndex = at;
    const match = cell.exec(text);
    if (!match) {
      faults.push({ file, row, found: 'a double quote out of place', expected: quoteRule });
      cells = [];
      const end = text.indexOf('\n', at);
      at = end === -1 ? text.length + 1 : end + 1;
      row += 1;
      continue;
    }
    cells.push((match[1]?.replaceAll('""', '"') ?? match[2] ?? '').trim());
    at = cell.lastIndex;
    if (match[3] !== ',') {
      if (cells.some((one) => one !== '')) {
        rows.push({ row, cells });
      }
      cells = [];
      row += 1;
      if (match[3] === '') {
        break;
      }
    }
  }
  return { rows, faults };
}

const quoteRule =
  'a cell with commas, quotes or line breaks in double quotes, quotes inside doubled';
