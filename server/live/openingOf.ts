import type { Command } from '#domain/progress/command.ts';
import { refusal } from '#domain/refusal.ts';
import { bad, good, type Result } from '#domain/result.ts';
import { workFaults } from '#domain/tasks/checkWork.ts';
import { readTables } from '#domain/tasks/tables.ts';
import type { Work } from '#domain/tasks/work.ts';
import type { RefusalReply } from '#shared/wire.ts';
import type { BuildSource, OpenRequest } from '#shared/wireBuilds.ts';
import { designWork, type Kits } from '../kits.ts';

type Opening = Extract<Command, { kind: 'open-build' }>;

const nothing: Work = { tasks: [], links: [], crews: [], zones: [], loads: [] };

/** Turns the host's request into the command that opens the record: the bridge designed, or the tables read. */
export function openingOf(
  { id, source, ...about }: OpenRequest,
  { kits, program, now }: { readonly kits: Kits; readonly program: string; readonly now: string },
): Result<Opening, RefusalReply> {
  const begun = startFrom(source, kits);
  if (!begun.ok) return begun;
  const body = { ...about, program, ...begun.value };
  const by = { role: 'leader', name: 'Leader' } as const;
  return good({ id, kind: 'open-build', body, by, happenedAt: now, receivedAt: now });
}

function startFrom(
  source: BuildSource,
  kits: Kits,
): Result<Pick<Opening['body'], 'ground' | 'bridge' | 'work'>, RefusalReply> {
  switch (source.kind) {
    case 'empty':
      return good({ ground: null, bridge: null, work: nothing });
    case 'bridge': {
      const designed = designWork(kits, source);
      return designed.ok ? good({ ground: source.ground, ...designed.value }) : designed;
    }
    case 'work': {
      const faults = workFaults(source.work);
      if (faults.length === 0) return good({ ground: null, bridge: null, work: source.work });
      const sentence =
        'The order of work is not as it should be. Mend what the faults name, then try again.';
      return bad({ ...refusal('work-faulty', sentence), faults });
    }
    case 'tables': {
      const file = (name: string, text: string | undefined) =>
        text === undefined ? undefined : { file: name, text };
      const work = readTables({
        tasks: { file: 'tasks', text: source.tasks },
        links: file('links', source.links),
        crews: file('crews', source.crews),
        equipment: file('equipment', source.equipment),
      });
      if (work.ok) return good({ ground: null, bridge: null, work: work.value });
      const sentence =
        'The tables are not as they should be. Mend what the faults name, then try again.';
      return bad({ ...refusal('work-faulty', sentence), faults: work.reason });
    }
  }
}
