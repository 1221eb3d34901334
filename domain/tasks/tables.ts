import type { Fault } from '../fault.ts';
import { bad, good, type Result } from '../result.ts';
import { loopSentence, workFaults } from './checkWork.ts';
import { readCrewTable } from './crewTable.ts';
import { readEquipmentTable } from './equipmentTable.ts';
import { findLoop } from './graph.ts';
import { readLinkTable } from './linkTable.ts';
import { type TableFile, tableRows } from './tableFile.ts';
import { readTaskRow, type TaskRow, taskColumns } from './taskRow.ts';
import type { Link, Work, Zone } from './work.ts';

export type Tables = {
  readonly tasks: TableFile;
  readonly links?: TableFile | undefined;
  readonly crews?: TableFile | undefined;
  readonly equipment?: TableFile | undefined;
};

/**
 * Reads an order of work from tables (RFC 4180, columns in any order). Every fault of every row comes back at once,
 * with file, row and column; nothing is half read. Tasks are numbered in the order of their rows. A hold has no
 * measures; zones are on the near bank and have no limit of room. Without a crew table the crews that tasks name are
 * kept in their needs, and the work has no crews; without an equipment table there is enough of all that tasks name.
 */
export function readTables(tables: Tables): Result<Work, Fault[]> {
  const faults: Fault[] = [];
  const { file } = tables.tasks;
  const { rows, complete } = tableRows(tables.tasks, taskColumns, ['task', 'likely'], faults);
  if (complete && rows.length === 0) {
    faults.push({ file, row: 2, found: 'no tasks', expected: 'at least one task' });
  }
  const crews = tables.crews ? readCrewTable(tables.crews, faults) : null;

  const rowOf = new Map<string, number>();
  for (const row of rows) {
    const id = row.cell('task');
    rowOf.set(id, rowOf.get(id) ?? row.row);
  }
  const opened: number[] = [];
  const known = { rowOf, complete, crews: crews?.ids ?? null, opened };
  const read = rows.filter((row) => row.whole).flatMap((row) => readTaskRow(row, known) ?? []);

  const told = tables.links ? readLinkTable(tables.links, complete ? rowOf : null, faults) : [];
  // A link that stands in both tables has the wait that the link table gives it.
  const inBoth = new Set(told.filter(({ counts }) => counts === 'finish').map(ends));
  const links = [...linksAfter(read).filter((link) => !inBoth.has(ends(link))), ...told];
  const work: Work = {
    tasks: read.map(({ task }, at) => ({ ...task, number: at + 1 })),
    links,
    crews: [...(crews?.crews ?? [])],
    zones: zonesOf(read),
    loads: [],
    ...(tables.equipment && { equipment: readEquipmentTable(tables.equipment, faults) }),
  };
  const loop = loopAmong(work);
  if (loop) {
    const row = rowOf.get(loop[0] as string) ?? 1;
    const expected = 'an order without a loop: take one of these links out';
    faults.push({ file, row, column: 'after', found: loopSentence(loop), expected });
  }
  if (faults.length === 0) {
    // What no single row can be at fault for: more lent than there are, more wanted than there is.
    faults.push(...workFaults(work).map((fault) => ({ ...fault, file: fileOf(fault, tables) })));
  }
  return faults.length === 0 ? good(work) : bad(inOrder(faults, tables));
}

function fileOf({ path = '' }: Fault, { tasks, links, crews }: Tables): string {
  const table = path.startsWith('/crews') ? crews : path.startsWith('/links') ? links : tasks;
  return (table ?? tasks).file;
}

/** A loop among the links that could be read: whatever else is wrong, no other link takes it away. */
function loopAmong(work: Work): string[] | null {
  const ids = new Set(work.tasks.map(({ id }) => id));
  // Of two rows with one id nobody knows whose links are meant; a task after itself is its own fault.
  if (ids.size < work.tasks.length) return null;
  const links = work.links.filter(({ from, to }) => from !== to && ids.has(from) && ids.has(to));
  return findLoop({ ...work, links });
}

function ends({ from, to }: Link): string {
  return `${from} ${to}`;
}

/** Table by table, row by row. */
function inOrder(faults: readonly Fault[], { tasks, links, crews, equipment }: Tables): Fault[] {
  const files = [tasks.file, links?.file, crews?.file, equipment?.file];
  const place = ({ file, row }: Fault) => files.indexOf(file) * 1e6 + (row ?? 0);
  return [...faults].sort((one, other) => place(one) - place(other));
}

function linksAfter(read: readonly TaskRow[]): Link[] {
  return read.flatMap(({ task, after }) =>
    after.map((from): Link => ({ from, to: task.id, counts: 'finish', wait: 0 })),
  );
}

function zonesOf(read: readonly TaskRow[]): Zone[] {
  const ids = new Set(read.flatMap(({ task }) => task.zones));
  return [...ids].map((id) => ({ id, name: id, bank: 'near' }));
}
