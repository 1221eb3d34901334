import type { Work } from '#domain/tasks/work.ts';
import type { planReport } from './planReport.ts';

/** The report for reading: what opens when, how sure that is, and every task with its reason. */
export function planText(work: Work, report: ReturnType<typeof planReport>): string[] {
  const { forecast, classic } = report;
  const lines = [
    `Opens ${minutes(report.minutesToOpen)} after the start, by plan. No plan with these people opens before ${minutes(report.lowerBound)}.`,
    `Forecast of ${forecast.runs} runs: nine in ten by ${minutes(forecast.p90)}, eight in ten by ${minutes(forecast.p80)}, even chance by ${minutes(forecast.p50)}.`,
  ];
  if (forecast.chanceBy && classic.chanceBy) {
    lines.push(
      `Chance to open by ${minutes(forecast.chanceBy.minutes)}: ${percent(forecast.chanceBy.chance)}. The textbook's single path would say ${percent(classic.chanceBy.chance)}.`,
    );
  }
  lines.push(`Critical path over links: ${report.criticalPath.join(', ')}.`);
  lines.push(...healthLines(report.health), '');

  const names = new Map(work.tasks.map(({ id, name }) => [id, name]));
  const rows = report.tasks.map((task) => [
    clock(task.start),
    clock(task.finish),
    task.task,
    names.get(task.task) === task.task ? '' : (names.get(task.task) ?? ''),
    task.crews.map(({ crew, people }) => `${crew} ${people}`).join(', '),
    task.reason,
  ]);
  const table = [['start', 'finish', 'task', 'name', 'crews', 'why not earlier'], ...rows];
  const columns = table[0]!.map((_, column) => column);
  const used = columns.filter((column) => rows.some((row) => row[column] !== ''));
  const widths = columns.map((column) => Math.max(...table.map((row) => row[column]!.length)));
  for (const row of table) {
    lines.push(
      used
        .map((column) => row[column]!.padEnd(widths[column]!))
        .join('  ')
        .trimEnd(),
    );
  }
  return lines;
}

/** What to mend or look at before the plan is trusted, and one line when there is nothing. */
function healthLines(health: ReturnType<typeof planReport>['health']): string[] {
  if (health.length === 0) {
    return ['Order of work: nothing to mend.'];
  }
  const words = { stops: 'mend', mend: 'mend', look: 'look at' };
  return [
    'Order of work, before the plan is trusted:',
    ...health.map(({ weight, sentence }) => `  ${words[weight]}: ${sentence}`),
  ];
}

/** Hours, minutes and, where there are any, seconds: `H+2:05` or `H+2:05:30`. */
function clock(time: number): string {
  const seconds = Math.round(time * 60);
  const two = (count: number) => String(count).padStart(2, '0');
  const rest = seconds % 60 === 0 ? '' : `:${two(seconds % 60)}`;
  return `H+${Math.floor(seconds / 3600)}:${two(Math.floor(seconds / 60) % 60)}${rest}`;
}

function minutes(time: number): string {
  return `${Math.round(time * 10) / 10} min`;
}

function percent(chance: number): string {
  return `${Math.round(chance * 100)} %`;
}
