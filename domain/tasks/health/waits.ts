import type { Link } from '../work.ts';
import { type Examined, share } from './examined.ts';
import type { Finding } from './finding.ts';
import { isWithin, marks, sources } from './marks.ts';

/** Negative waits, each by itself; waits and links from a start where there are more than the marks allow. */
export function waitFindings(examined: Examined): Finding[] {
  const { open, named } = examined;
  const todo = new Set(open.map(({ id }) => id));
  const links = examined.work.links.filter(({ to }) => todo.has(to));
  const findings = links
    .filter(({ wait }) => wait < 0)
    .map((link): Finding => {
      const before = `${named([link.to])} may start ${-link.wait} min before ${named([link.from])} ${link.counts === 'finish' ? 'is finished' : 'is begun'}`;
      const sentence = `${before}. If that runs late, the start is a guess: split ${named([link.from])} where the other can begin, and link to the first part.`;
      const tasks = [link.from, link.to];
      return {
        kind: 'negative-wait',
        weight: 'mend',
        tasks,
        sentence,
        source: sources.negativeWaits,
      };
    });
  const waits = links.filter(({ wait }) => wait > 0);
  if (!isWithin(waits.length, links.length, marks.waits)) {
    const tasks = endsOf(waits);
    const sentence = `${share(waits.length, links.length, 'links')} wait some minutes, before ${named(tasks)}. Make a task of each wait that somebody has to watch, so that it can be told and seen.`;
    findings.push({ kind: 'many-waits', weight: 'look', tasks, sentence, source: sources.waits });
  }
  const starts = links.filter(({ counts }) => counts === 'start');
  if (!isWithin(starts.length, links.length, marks.startLinks)) {
    const tasks = endsOf(starts);
    const sentence = `${share(starts.length, links.length, 'links')} count from a start, before ${named(tasks)}. Split the task before each and link to the finish of its first part.`;
    const source = sources.startLinks;
    findings.push({ kind: 'many-start-links', weight: 'look', tasks, sentence, source });
  }
  return findings;
}

function endsOf(links: readonly Link[]): string[] {
  return [...new Set(links.map(({ to }) => to))];
}
