import type { Examined } from './examined.ts';
import type { Finding } from './finding.ts';
import { sources } from './marks.ts';

/**
 * Tasks whose finish nothing waits for although something waits for their start. A start dangles only where nothing
 * comes before the task at all: every link here leads to a start.
 */
export function danglingFindings({ open, after, opening, named }: Examined): Finding[] {
  const tasks = open
    .filter(({ id }) => {
      const links = after.get(id) ?? [];
      return links.length > 0 && links.every(({ counts }) => counts === 'start');
    })
    .filter(({ id }) => !opening.has(id))
    .map(({ id }) => id);
  if (tasks.length === 0) {
    return [];
  }
  const sentence = `${named(tasks)}: only the start is waited for, so it may go on for ever and hold nothing up. Say what waits for its finish.`;
  return [{ kind: 'finish-dangles', weight: 'mend', tasks, sentence, source: sources.dangling }];
}
