import type { Fault } from '../fault.ts';
import { readId, readIds, readMinutes, readName } from './tableCells.ts';
import { type TableFile, tableRows } from './tableFile.ts';
import { readCounts, readLent, readRests, readSteps } from './tableLists.ts';
import type { Crew } from './work.ts';

const columns = [
  'crew',
  'name',
  'people',
  'from',
  'to',
  'skills',
  'skilled',
  'strength',
  'lent',
  'rests',
] as const;

/**
 * Reads a crew table. `from` and `to` are minutes after the start of the build; blank is the whole build. `strength` is
 * how many there are later on (`240:5`), `lent` who is with another crew meanwhile (`brace:2:60-120`), `rests` when they
 * eat and rest (`180-210`, or some of them `4:180-210`), `skilled` what only some can do (`weld:2`).
 * `ids` are the crews the table names, null when it could not be read in full. Faults are added to `faults`.
 */
export function readCrewTable(
  table: TableFile,
  faults: Fault[],
): { crews: Crew[]; ids: Set<string> | null } {
  const { file } = table;
  const { rows, complete } = tableRows(table, columns, ['crew', 'people'], faults);
  if (complete && rows.length === 0) {
    faults.push({ file, row: 2, found: 'no crews', expected: 'at least one crew' });
  }
  const known = new Set(rows.map((row) => row.cell('crew')));
  const ids = new Set<string>();
  const crews: Crew[] = [];
  for (const row of rows) {
    const id = readId(row, 'crew');
    if (id !== null && ids.has(id)) {
      row.fault('crew', 'an id of its own');
    }
    ids.add(row.cell('crew'));
    if (!row.whole) {
      continue;
    }
    const name = readName(row, 'name', id ?? '', 60);
    const people = /^\d{1,3}$/.test(row.cell('people')) ? Number(row.cell('people')) : 501;
    if (people > 500) {
      row.fault('people', 'a number to 500');
    }
    const from = readMinutes(row, 'from', 0, undefined);
    const to = readMinutes(row, 'to', 0, undefined);
    if (typeof to === 'number' && from !== null && to <= (from ?? 0)) {
      row.fault('to', `later than ${from ?? 0}`);
    }
    const skills = readIds(row, 'skills');
    const skilled = readCounts(row, 'skilled', 500).map(({ id: skill, count }) => ({
      skill,
      people: count,
    }));
    const strength = readSteps(row, 'strength');
    const lent = readLent(row, 'lent');
    const rests = readRests(row, 'rests');
    for (const { crew } of lent) {
      if (crew === id || (complete && !known.has(crew))) {
        row.fault('lent', 'another crew of this table', crew);
      }
    }
    if (id !== null && from !== null && to !== null) {
      const hours = {
        ...(from === undefined ? {} : { from }),
        ...(to === undefined ? {} : { to }),
      };
      const more = {
        ...(skilled.length > 0 ? { skilled } : {}),
        ...(strength.length > 0 ? { strength } : {}),
        ...(lent.length > 0 ? { lent } : {}),
        ...(rests.length > 0 ? { rests } : {}),
      };
      crews.push({ id, name, people, ...hours, ...more, skills, attached: false });
    }
  }
  return { crews, ids: complete ? ids : null };
}
