import { criticalPath } from '../../schedule/criticalPath.ts';
import { type Examined, share } from './examined.ts';
import type { Finding } from './finding.ts';
import { isWithin, marks, sources } from './marks.ts';

/** Tasks too long to be followed, and floats so large that a link is probably missing. */
export function longFindings(examined: Examined): Finding[] {
  const { open, named } = examined;
  const findings: Finding[] = [];
  const weigh = (tasks: readonly string[]) =>
    isWithin(tasks.length, open.length, marks.overMark) ? 'look' : 'mend';

  const long = open.filter(({ minutes }) => minutes.likely > marks.longTask).map(({ id }) => id);
  if (long.length > 0) {
    const sentence = `${named(long)}: likely to take more than ${marks.longTask} min, ${share(long.length, open.length, 'tasks')}. Split it into parts that can each be told done.`;
    const source = sources.longTask;
    findings.push({ kind: 'very-long', weight: weigh(long), tasks: long, sentence, source });
  }

  const floats = largeFloats(examined);
  if (floats.length > 0) {
    const sentence = `${named(floats)}: could slip more than ${marks.largeFloat} min and hold nothing up, ${share(floats.length, open.length, 'tasks')}. Say what needs it sooner, or leave it to the relief.`;
    const source = sources.largeFloat;
    findings.push({ kind: 'large-float', weight: weigh(floats), tasks: floats, sentence, source });
  }
  return findings;
}

function largeFloats({ work, options, open }: Examined): string[] {
  const critical = criticalPath(work, options.shape);
  if (!critical.ok) {
    return [];
  }
  const floats = new Map(critical.value.tasks.map(({ task, totalFloat }) => [task, totalFloat]));
  return open.filter(({ id }) => (floats.get(id) ?? 0) > marks.largeFloat).map(({ id }) => id);
}
