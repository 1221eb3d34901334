import { criticalPath } from '../../schedule/criticalPath.ts';
import { quickestWork } from '../../schedule/quickestWork.ts';
import { workToOpening } from '../../schedule/workToOpening.ts';
import { type Examined, share } from './examined.ts';
import type { Finding } from './finding.ts';
import { doneIndex, marks, pathIndex, sources } from './marks.ts';

/** The time asked for against the longest chain of links with the most people each task can use, and the tasks done against those that should be. */
export function timeFindings(examined: Examined): Finding[] {
  return [...askedFindings(examined), ...behindFindings(examined)];
}

function askedFindings({ work, options, named }: Examined): Finding[] {
  const { askedFor, shape } = options;
  const critical = criticalPath(quickestWork(workToOpening(work)), shape);
  if (askedFor === undefined || askedFor === null || !critical.ok) {
    return [];
  }
  const { minutes, path } = critical.value;
  const float = askedFor - minutes;
  if (float >= 0) {
    return [];
  }
  const weight = pathIndex(minutes, float) < marks.pathIndex ? 'mend' : 'look';
  const short = Math.round(-float * 10) / 10;
  const sentence = `${named(path)}: this chain alone takes ${short} min more than there is until the time asked for, with any number of people. Shorten it, begin earlier, or ask for a later opening.`;
  const tasks = [...path];
  return [{ kind: 'asked-too-early', weight, tasks, sentence, source: sources.pathIndex }];
}

function behindFindings({ options, open, named }: Examined): Finding[] {
  const { plan, past } = options;
  if (!plan || !past) {
    return [];
  }
  const todo = new Set(open.map(({ id }) => id));
  const due = plan.tasks.filter(({ finish }) => finish <= past.now);
  const late = due.filter(({ task }) => todo.has(task)).map(({ task }) => task);
  const done = past.tasks.filter(({ status }) => status === 'done').length;
  if (doneIndex(done, due.length) >= marks.doneIndex) {
    return [];
  }
  const sentence = `${named(late)}: by the plan in force done by now, and not told done; done are ${share(done, due.length, 'that should be')}. Ask whether it was only not told; if it is late, plan again.`;
  return [{ kind: 'behind', weight: 'mend', tasks: late, sentence, source: sources.doneIndex }];
}
