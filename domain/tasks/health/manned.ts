import { manningOf } from '../../schedule/manning.ts';
import { waysOf } from '../../schedule/ways.ts';
import type { Examined } from './examined.ts';
import type { Finding } from './finding.ts';
import { marks, sources } from './marks.ts';

const kinds: Readonly<Record<string, Finding['kind']>> = {
  'zone-too-small': 'zone-too-small',
  'window-too-short': 'hours-too-short',
  'light-too-short': 'light-too-short',
  'fixed-blocked': 'fixed-blocked',
};

/**
 * Tasks that cannot be manned: people that no crew can supply, zones without room, hours or daylight too short, fixed
 * starts and crews that cannot be kept to.
 */
export function manningFindings({ work, options, open }: Examined): Finding[] {
  const manning = manningOf(work, options.shape, options.crews);
  const now = Math.round((options.past?.now ?? 0) * 60);
  const begun = new Set((options.past?.tasks ?? []).map(({ task }) => task));
  return open
    .filter(({ id }) => !begun.has(id))
    .flatMap((task): Finding[] => {
      const ways = waysOf(manning, task, 1, now);
      if (ways.ok) return [];
      const { code, sentence } = ways.reason;
      const kind = kinds[code] ?? 'no-crew-can';
      return [{ kind, weight: 'stops', tasks: [task.id], sentence, source: sources.scheduler }];
    });
}

/** Work of some length that takes nobody: a wait that looks like a task, or people who were forgotten. */
export function nobodyFindings({ open, options, named }: Examined): Finding[] {
  const tasks = open
    .filter(({ needs }) => needs.every(({ people }) => people.usual === 0))
    .filter(({ minutes }) => minutes.likely >= marks.nobodyNamed)
    .map(({ id }) => id);
  if (!options.crews || tasks.length === 0) {
    return [];
  }
  const sentence = `${named(tasks)}: takes ${marks.nobodyNamed} min or more and nobody. Say how many people, or make it a wait on the link.`;
  return [{ kind: 'nobody-named', weight: 'look', tasks, sentence, source: sources.nobodyNamed }];
}
