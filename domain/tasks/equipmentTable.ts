import type { Fault } from '../fault.ts';
import { readId, readName } from './tableCells.ts';
import { type TableFile, tableRows } from './tableFile.ts';
import type { Work } from './work.ts';

const columns = ['equipment', 'name', 'count'] as const;

/** Reads a table of what there is of each kind of equipment. Faults are added to `faults`. */
export function readEquipmentTable(
  table: TableFile,
  faults: Fault[],
): NonNullable<Work['equipment']> {
  const { rows } = tableRows(table, columns, ['equipment', 'count'], faults);
  const seen = new Set<string>();
  return rows.flatMap((row) => {
    const id = readId(row, 'equipment');
    if (id !== null && seen.has(id)) {
      row.fault('equipment', 'an id of its own');
    }
    seen.add(row.cell('equipment'));
    if (!row.whole) {
      return [];
    }
    const name = readName(row, 'name', id ?? '', 60);
    const count = /^\d{1,4}$/.test(row.cell('count')) ? Number(row.cell('count')) : 1001;
    if (count > 1000) {
      row.fault('count', 'a number to 1000');
    }
    return id === null ? [] : [{ id, name, count }];
  });
}
