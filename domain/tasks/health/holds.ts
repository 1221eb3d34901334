import type { Examined } from './examined.ts';
import type { Finding } from './finding.ts';
import { sources } from './marks.ts';

/** Hold points that nothing waits for, and hold points with nothing before them to look at. */
export function holdFindings(examined: Examined): Finding[] {
  const { open, before, named } = examined;
  const holds = open.filter(({ hold }) => hold !== undefined);
  const idle = holds.filter(({ id }) => !isWaitedFor(examined, id)).map(({ id }) => id);
  const blind = holds.filter(({ id }) => !before.has(id)).map(({ id }) => id);
  const findings: Finding[] = [];
  const { holds: source } = sources;
  if (idle.length > 0) {
    const sentence = `${named(idle)}: this hold guards nothing, for no task waits until it is passed. Put what must not be done before it after it, by its finish and without a negative wait.`;
    findings.push({ kind: 'hold-guards-nothing', weight: 'mend', tasks: idle, sentence, source });
  }
  if (blind.length > 0) {
    const sentence = `${named(blind)}: this hold looks at nothing, for no task comes before it. Put the work that is inspected before it.`;
    findings.push({
      kind: 'hold-looks-at-nothing',
      weight: 'mend',
      tasks: blind,
      sentence,
      source,
    });
  }
  return findings;
}

/** Traffic waits for the hold that opens; without one, for a hold that is the only end of the build. */
function isWaitedFor({ work, after }: Examined, id: string): boolean {
  const opens = work.tasks.find((task) => task.opens);
  if (opens?.id === id) return true;
  const links = after.get(id) ?? [];
  if (links.some(({ counts, wait }) => counts === 'finish' && wait >= 0)) return true;
  return !opens && work.tasks.filter((task) => !after.has(task.id)).length < 2 && !links.length;
}
