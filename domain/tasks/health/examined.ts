import type { Shape } from '../../forecast/forecast.ts';
import { inWords } from '../../progress/words.ts';
import { openingTasks } from '../../schedule/opening.ts';
import type { Past } from '../../schedule/past.ts';
import type { Plan } from '../../schedule/plan.ts';
import type { Task } from '../task.ts';
import type { Link, Work } from '../work.ts';

export type HealthOptions = {
  readonly shape: Shape;
  /** False: as many people as anybody wants, as `makePlan` takes it. */
  readonly crews: boolean;
  /** Minutes after the start at which traffic was asked for. */
  readonly askedFor?: number | null | undefined;
  /** The plan in force and what has happened: what is done is no longer looked at. */
  readonly plan?: Plan | null | undefined;
  readonly past?: Past | undefined;
};

/** An order of work laid out for the checks. */
export type Examined = {
  readonly work: Work;
  readonly options: HealthOptions;
  /** Tasks not done yet. */
  readonly open: readonly Task[];
  readonly before: ReadonlyMap<string, readonly Link[]>;
  readonly after: ReadonlyMap<string, readonly Link[]>;
  /** The tasks of which the last to finish is the opening. */
  readonly opening: ReadonlySet<string>;
  /** "Bay 1, Bay 2 and 7 more". */
  readonly named: (tasks: readonly string[]) => string;
};

/** Most names that one sentence says. */
const mostNames = 4;

export function examine(work: Work, options: HealthOptions): Examined {
  const done = new Set(
    (options.past?.tasks ?? []).filter(({ status }) => status === 'done').map(({ task }) => task),
  );
  const names = new Map(work.tasks.map(({ id, name }) => [id, name]));
  return {
    work,
    options,
    open: work.tasks.filter(({ id }) => !done.has(id)),
    before: grouped(work.links, 'to'),
    after: grouped(work.links, 'from'),
    opening: openingTasks(work),
    named: (tasks) => {
      const all = tasks.map((task) => names.get(task) ?? task);
      const rest = all.length - mostNames;
      return inWords(rest > 1 ? [...all.slice(0, mostNames), `${rest} more`] : all);
    },
  };
}

function grouped(links: readonly Link[], end: 'from' | 'to'): Map<string, Link[]> {
  const groups = new Map<string, Link[]>();
  for (const link of links) {
    const group = groups.get(link[end]);
    if (group) group.push(link);
    else groups.set(link[end], [link]);
  }
  return groups;
}

/** "1 of 40 tasks (2.5 %)". */
export function share(found: number, of: number, things: string): string {
  return `${found} of ${of} ${things} (${Math.round((found / of) * 1000) / 10} %)`;
}
