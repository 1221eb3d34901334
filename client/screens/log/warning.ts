import { orderIndex } from '#domain/progress/orderIndex.ts';
import { mayWorkAt } from '#domain/progress/plannedCrews.ts';
import { breachesOf } from '#domain/progress/rules/breaches.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { keepOffCheck } from '#domain/progress/views/keepOff.ts';
import { clock } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import type { Meant } from './reading.ts';

/** What is amiss with a report about work before it is sent: the rule it would break, or a crew that was not to do it. */
export function warningOf(state: BuildState, meant: Meant | null, at: number): string | null {
  switch (meant?.kind) {
    case 'tell-started':
    case 'tell-finished':
    case 'tell-resumed':
    case 'tell-part':
    case 'tell-stopped': {
      const happenedAt = new Date(at).toISOString();
      const by = { role: 'log' as const, name: '' };
      const told = { ...meant, id: '', by, happenedAt, receivedAt: happenedAt };
      const broken = breachesOf(state, told, happenedAt)[0];
      if (broken) return words.log.wouldBreak(broken.sentence);
      const ended = endOf(state, meant);
      if (ended !== null) return words.log.alreadyDone(clock(ended, state.zone));
      const since = startOf(state, meant);
      if (since !== null && at < Date.parse(since)) {
        return words.log.beforeStart(clock(since, state.zone));
      }
      const task = orderIndex(state.work).task.get(meant.body.task);
      return task && !mayWorkAt(state, task, meant.body.crew) ? words.log.notItsTask : null;
    }
    case 'start-keep-off': {
      const missing = keepOffCheck(state, meant.body.task, new Date(at).toISOString());
      const first = missing.find(({ met }) => !met);
      return first ? words.log.wouldRefuse(first.sentence) : null;
    }
    default:
      return null;
  }
}

/** When the crew was told at it, where the report is one that comes after; null otherwise. */
function startOf(state: BuildState, { kind, body }: Meant): string | null {
  if (kind !== 'tell-finished' && kind !== 'tell-part' && kind !== 'tell-stopped') return null;
  const share = state.tasks[body.task]?.shares.find(({ crew }) => crew === body.crew);
  return share?.startedAt ?? null;
}

/** When the crew was told done with it, where the report says that it begins; null otherwise. */
function endOf(state: BuildState, { kind, body }: Meant): string | null {
  if (kind !== 'tell-started' && kind !== 'tell-resumed') return null;
  const share = state.tasks[body.task]?.shares.find(({ crew }) => crew === body.crew);
  return share?.status === 'done' ? share.finishedAt : null;
}
