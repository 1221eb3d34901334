import type { Fault } from '../fault.ts';
import { longestMinutes } from './checkWork.ts';
import { readId, readMinutes } from './tableCells.ts';
import { type TableFile, tableRows } from './tableFile.ts';
import type { Link } from './work.ts';

const columns = ['task', 'after', 'counts', 'wait'] as const;

/**
 * Reads a link table: `task` may start `wait` minutes (may be negative; blank is 0) after `after` finishes, or starts
 * where `counts` is `start`. `tasks` are the ids there are (null: not all are known). Faults are added to `faults`.
 */
export function readLinkTable(
  table: TableFile,
  tasks: ReadonlyMap<string, number> | null,
  faults: Fault[],
): Link[] {
  const { rows } = tableRows(table, columns, ['task', 'after'], faults);
  const key = ({ from, to, counts }: Link) => `${from} ${to} ${counts}`;
  const seen = new Set<string>();
  const links: Link[] = [];
  for (const row of rows) {
    if (!row.whole) {
      continue;
    }
    const to = readId(row, 'task');
    const from = readId(row, 'after');
    const counts = row.cell('counts').toLowerCase() || 'finish';
    const wait = readMinutes(row, 'wait', -longestMinutes, 0);
    for (const [column, id] of [
      ['task', to],
      ['after', from],
    ] as const) {
      if (id !== null && tasks && !tasks.has(id)) {
        row.fault(column, 'a task of the task table');
      }
    }
    if (to !== null && to === from) {
      row.fault('after', 'another task than itself');
    }
    if (counts !== 'finish' && counts !== 'start') {
      row.fault('counts', 'finish or start');
      continue;
    }
    if (to === null || from === null || wait === null) {
      continue;
    }
    const link: Link = { from, to, counts, wait };
    if (seen.has(key(link))) {
      row.fault('after', 'each link once', `${to} after the ${counts} of ${from} again`);
    }
    seen.add(key(link));
    links.push(link);
  }
  return links;
}
