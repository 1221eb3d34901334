import type { Task } from '#domain/tasks/task.ts';
import type { Link, Work } from '#domain/tasks/work.ts';

/**
 * Reads a single-mode benchmark instance in the `.sm` layout of Kolisch and Sprecher (European Journal of Operational
 * Research 96, 1996). One period becomes one minute, a renewable resource a crew, a job that uses several of them a
 * joint task.
 */
export function readSm(text: string): Work {
  const lines = text.split(/\r?\n/);
  const after = (title: string) => lines.findIndex((line) => line.startsWith(title)) + 1;
  const numbers = (line: string | undefined) => (line?.match(/-?\d+/g) ?? []).map(Number);
  const block = (title: string, skip: number) => {
    const rows: number[][] = [];
    for (let at = after(title) + skip; /^\s*\d/.test(lines[at] ?? ''); at += 1) {
      rows.push(numbers(lines[at]));
    }
    return rows;
  };
  const limits = numbers(lines[after('RESOURCEAVAILABILITIES') + 1]);
  const crews = limits.map((people, at) => ({
    id: `R${at + 1}`,
    name: `R${at + 1}`,
    people,
    skills: [],
    attached: false,
  }));
  const links = block('PRECEDENCE RELATIONS', 1).flatMap(([job, , , ...successors]) =>
    successors.map((to): Link => ({ from: `${job}`, to: `${to}`, counts: 'finish', wait: 0 })),
  );
  const tasks = block('REQUESTS/DURATIONS', 2).map(
    ([job = 0, , minutes = 0, ...uses]): Task => ({
      id: `${job}`,
      number: job,
      name: `${job}`,
      phase: '',
      needs: uses.flatMap((count, at) =>
        count > 0
          ? [{ anyOf: [`R${at + 1}`], people: { least: count, usual: count, most: count } }]
          : [],
      ),
      minutes: { quick: minutes, likely: minutes, slow: minutes },
      zones: [],
      keepOff: false,
      opens: false,
      cautions: [],
      tools: [],
      loads: [],
    }),
  );
  return { tasks, links, crews, zones: [], loads: [] };
}
