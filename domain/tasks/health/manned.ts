import { manningOf } from '../../schedule/manning.ts';
import { waysOf } from '../../schedule/ways.ts';
import type { Examined } from './examined.ts';
import type { Finding } from './finding.ts';
import { marks, sources } from './marks.ts';

/** Tasks that cannot be manned: people that no crew can supply, zones without room, hours that are too short. */
export function manningFindings({ work, options, open }: Examined): Finding[] {
  const manning = manningOf(work, options.shape, options.crews);
  const begun = new Set((options.past?.tasks ?? []).map(({ task }) => task));
  return open
    .filter(({ id }) => !begun.has(id))
    .flatMap((task): Finding[] => {
      const ways = waysOf(manning, task, 1);
      if (ways.ok) return [];
      const { code, sentence } = ways.reason;
      const kind =
        code === 'zone-too-small'
          ? 'zone-too-small'
          : code === 'window-too-short'
            ? 'hours-too-short'
            : 'no-crew-can';
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
