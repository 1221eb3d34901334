import type { Review } from './review.ts';

/** A review as a JSON file, the text that its schema `Review` describes. */
export function reviewJson(review: Review): string {
  return `${JSON.stringify(review, null, 2)}\n`;
}

/** Planned against actual by task as a table (RFC 4180, header `task,name,crews,planned,actual,usual,trust`). */
export function tasksCsv({ tasks }: Review): string {
  return csv(
    ['task', 'name', 'crews', 'planned', 'actual', 'usual', 'trust'],
    tasks.map((task) => [
      task.task,
      task.name,
      task.crews.join(' '),
      task.planned,
      task.actual,
      task.usual,
      task.trust,
    ]),
  );
}

/** Planned against actual by crew as a table (RFC 4180, header `crew,name,tasks,planned,actual`). */
export function crewsCsv({ crews }: Review): string {
  return csv(
    ['crew', 'name', 'tasks', 'planned', 'actual'],
    crews.map(({ crew, name, tasks, planned, actual }) => [crew, name, tasks, planned, actual]),
  );
}

/** The proposals as a table (RFC 4180): values of the kit before, proposed values after. */
export function proposalsCsv({ proposals }: Review): string {
  const points = ['quick', 'likely', 'slow'] as const;
  return csv(
    ['task', 'name', ...points.map((point) => `kit-${point}`), ...points, 'builds', 'tasks'],
    proposals.map(({ task, name, was, minutes, builds, tasks }) => [
      task,
      name,
      ...points.map((point) => was[point]),
      ...points.map((point) => minutes[point]),
      builds,
      tasks,
    ]),
  );
}

function csv(header: readonly string[], rows: readonly (readonly (string | number)[])[]): string {
  return [header, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

/** In quotes where it has to be. A text that a spreadsheet would take for a formula is kept a text by a leading quote. */
function cell(value: string | number): string {
  if (typeof value === 'number') return String(value);
  const text = /^[=+\-@\t]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
