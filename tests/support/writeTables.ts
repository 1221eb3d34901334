import type { TableFile } from '#domain/tasks/tableFile.ts';
import type { People } from '#domain/tasks/task.ts';
import type { Work } from '#domain/tasks/work.ts';

/** Writes an order of work as the three tables that hold it; what tables have no columns for is left out. */
export function writeTables(
  work: Work,
  lineEnd = '\r\n',
): { tasks: TableFile; links: TableFile; crews?: TableFile; equipment?: TableFile } {
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
    (task.equipment ?? []).map(({ id, count }) => `${id}:${count}`).join(' '),
    task.daylight ? 'Day' : '',
    task.fixed?.start === undefined ? '' : String(task.fixed.start),
    (task.needs[0]?.with ?? []).map(({ skill, people }) => `${skill}:${people}`).join(' '),
  ]);
  const links = work.links
    .filter((link) => !plain.includes(link))
    .map(({ from, to, counts, wait }) => [to, from, counts, String(wait)]);
  const crews = work.crews.map(({ id, name, people, from, to, skills, ...more }) => [
    id,
    name,
    String(people),
    from === undefined ? '' : String(from),
    to === undefined ? '' : String(to),
    skills.join(' '),
    (more.skilled ?? []).map((one) => `${one.skill}:${one.people}`).join(' '),
    (more.strength ?? []).map((step) => `${step.from}:${step.people}`).join(';'),
    (more.lent ?? []).map((one) => `${one.crew}:${one.people}:${one.from}-${one.to}`).join(' '),
    (more.rests ?? [])
      .map(({ from: begins, to: ends, people: some }) => {
        return `${some === undefined ? '' : `${some}:`}${begins}-${ends}`;
      })
      .join(', '),
  ]);
  const equipment = (work.equipment ?? []).map(({ id, name, count }) => [id, name, String(count)]);
  const table = (file: string, header: string, rows: string[][]) => ({
    file,
    text: [header, ...rows.map((row) => row.map(quoted).join(','))].join(lineEnd) + lineEnd,
  });
  return {
    tasks: table(
      'tasks.csv',
      'task,name,crews,people,quick,likely,slow,after,zones,keepoff,hold,opens,equipment,light,fixed,with',
      tasks,
    ),
    links: table('links.csv', 'task,after,counts,wait', links),
    ...(crews.length > 0
      ? {
          crews: table(
            'crews.csv',
            'crew,name,people,from,to,skills,skilled,strength,lent,rests',
            crews,
          ),
        }
      : {}),
    ...(work.equipment
      ? { equipment: table('equipment.csv', 'equipment,name,count', equipment) }
      : {}),
  };
}

function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

function peopleText({ least, usual, most }: People): string {
  return least === usual && usual === most ? `${usual}` : `${least}-${usual}-${most}`;
}
