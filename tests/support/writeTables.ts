import type { TableFile } from '#domain/tasks/tableFile.ts';
import type { People } from '#domain/tasks/task.ts';
import type { Work } from '#domain/tasks/work.ts';

/** Writes an order of work as the three tables that hold it; what tables have no columns for is left out. */
export function writeTables(
  work: Work,
  lineEnd = '\r\n',
): { tasks: TableFile; links: TableFile; crews?: TableFile } {
  const plain = work.links.filter(({ counts, wait }) => counts === 'finish' && wait === 0);
  const tasks = work.tasks.map((task) => [
    task.id,
    task.name,
    task.needs.length > 1
      ? task.needs.map(({ anyOf, people }) => `${anyOf[0]}:${peopleText(people)}`).join(' ')
      : (task.needs[0]?.anyOf.join('; ') ?? ''),
    task.needs.length > 1 ? '' : peopleText(task.needs[0]!.people),
    String(task.minutes.quick),
    String(task.minutes.likely),
    String(task.minutes.slow),
    plain
      .filter(({ to }) => to === task.id)
      .map(({ from }) => from)
      .join(' '),
    task.zones.join(','),
    task.keepOff ? 'yes' : '',
    task.hold ? 'x' : 'no',
    task.opens ? 'TRUE' : '',
  ]);
  const links = work.links
    .filter((link) => !plain.includes(link))
    .map(({ from, to, counts, wait }) => [to, from, counts, String(wait)]);
  const crews = work.crews.map(({ id, name, people, from, to, skills }) => [
    id,
    name,
    String(people),
    from === undefined ? '' : String(from),
    to === undefined ? '' : String(to),
    skills.join(' '),
  ]);
  const table = (file: string, header: string, rows: string[][]) => ({
    file,
    text: [header, ...rows.map((row) => row.map(quoted).join(','))].join(lineEnd) + lineEnd,
  });
  return {
    tasks: table(
      'tasks.csv',
      'task,name,crews,people,quick,likely,slow,after,zones,keepoff,hold,opens',
      tasks,
    ),
    links: table('links.csv', 'task,after,counts,wait', links),
    ...(crews.length > 0
      ? { crews: table('crews.csv', 'crew,name,people,from,to,skills', crews) }
      : {}),
  };
}

function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

function peopleText({ least, usual, most }: People): string {
  return least === usual && usual === most ? `${usual}` : `${least}-${usual}-${most}`;
}
