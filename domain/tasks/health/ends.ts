import { everythingAfter } from '../graph.ts';
import type { Task } from '../task.ts';
import { type Examined, share } from './examined.ts';
import type { Finding } from './finding.ts';
import { isWithin, marks, sources } from './marks.ts';

/**
 * Tasks with nothing before them, nothing after them, or neither. The first of them is the start of the build; what opens, and what
 * comes after that, need not lead on. Without a task that opens, a single end is the end of the build.
 */
export function endFindings(examined: Examined): Finding[] {
  const { open, work, before, after, named } = examined;
  if (work.tasks.length < 2) {
    return [];
  }
  const alone = open.filter(({ id }) => !before.has(id) && !after.has(id)).map(({ id }) => id);
  const starts = looseStarts(examined);
  const ends = looseEnds(examined);
  const found = new Set([...alone, ...starts, ...ends]).size;
  const weight = isWithin(found, open.length, marks.openEnds) ? 'look' : 'mend';
  const counted = `In all, ${share(found, open.length, 'tasks')} lack a link.`;
  const findings: Finding[] = [];
  const add = (kind: Finding['kind'], tasks: readonly string[], sentence: string) => {
    if (tasks.length === 0) return;
    const said = `${sentence} ${counted}`;
    findings.push({ kind, weight, tasks: [...tasks], sentence: said, source: sources.openEnds });
  };
  add(
    'stands-alone',
    alone,
    `${named(alone)}: linked to nothing, neither before nor after. Say what comes before and what waits for it, or take it out.`,
  );
  add(
    'nothing-before',
    starts,
    `${named(starts)}: nothing comes before, so each may start with the build. Say what each comes after, if only the orders.`,
  );
  add('nothing-after', ends, `${named(ends)}: ${whyLoose(examined)}`);
  return findings;
}

function looseStarts({ open, work, before, after }: Examined): string[] {
  const isStart = ({ id }: Task) => !before.has(id) && after.has(id);
  const start = work.tasks.find(isStart);
  return open.filter((task) => isStart(task) && task !== start).map(({ id }) => id);
}

function looseEnds({ open, work, before, after }: Examined): string[] {
  const isEnd = (id: string) => !after.has(id) && before.has(id);
  const opens = work.tasks.find((task) => task.opens);
  if (opens) {
    const later = everythingAfter(work, opens.id);
    return open
      .filter(({ id }) => isEnd(id) && id !== opens.id && !later.has(id))
      .map(({ id }) => id);
  }
  const ends = work.tasks.filter(({ id }) => isEnd(id));
  if (ends.length < 2) {
    return [];
  }
  return open.filter(({ id }) => isEnd(id)).map(({ id }) => id);
}

function whyLoose({ work }: Examined): string {
  return work.tasks.some((task) => task.opens)
    ? 'nothing waits for it, so the bridge may open without it. Say what comes after, at last the opening.'
    : 'nothing comes after, and no task is said to open. Say which task opens and put the others before it.';
}
