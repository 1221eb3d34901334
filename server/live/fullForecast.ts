import { conditionsSentence, conditionsUsed } from '#domain/forecast/doubt/conditions.ts';
import { sourcesOfDoubt } from '#domain/forecast/doubt/sources.ts';
import type { Role } from '#domain/progress/command.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { doubtInForce } from '#domain/progress/views/doubtInForce.ts';
import type { ForecastFrame } from '#shared/wire.ts';
import type { ForecastMove, FullForecast } from '#shared/wireForecast.ts';
import { lightShown } from './lightShown.ts';

/** The forecast with all that it rests on, seen from `now` (ISO 8601 UTC). */
export function fullForecast(
  state: BuildState,
  frame: ForecastFrame | null,
  moved: FullForecast['moved'],
  now: string,
): FullForecast {
  const { work, plan, tasks, confidence } = state;
  const forecast = frame?.forecast;
  const doubt = doubtInForce(state);
  const taskNames = new Map(work.tasks.map(({ id, name }) => [id, name]));
  const crewNames = new Map(work.crews.map(({ id, name }) => [id, name]));
  const planned = new Map(plan?.tasks.map(({ task, finish }) => [task, finish]));
  return {
    frame,
    confidence,
    milestones: (forecast?.milestones ?? [])
      .map((milestone) => ({
        ...milestone,
        name: taskNames.get(milestone.task) ?? milestone.task,
        planned: planned.get(milestone.task) ?? null,
        done: tasks[milestone.task]?.status === 'done',
      }))
      .sort((one, other) => one.p50 - other.p50),
    tasksOnChain: (forecast?.onChain ?? []).map(({ task: id, share }) => ({
      id,
      name: taskNames.get(id) ?? id,
      share,
    })),
    crewsOnChain: (forecast?.crewsOnChain ?? []).map(({ crew: id, share }) => ({
      id,
      name: crewNames.get(id) ?? id,
      share,
    })),
    doubt,
    chosen: state.doubt !== undefined,
    sources: sourcesOfDoubt(doubt),
    conditions: conditionsUsed(doubt),
    conditionsSentence: conditionsSentence(doubt),
    light: lightShown(state, plan?.minutesToOpen ?? 0, now),
    moved,
  };
}

/** A move as a role may read it: the pace of a crew and how long its tasks took are the leader's to see. */
export function moveFor<Move extends ForecastMove | null>(role: Role, move: Move): Move {
  if (move === null || role === 'leader') return move;
  return {
    ...move,
    causes: move.causes.map((cause) => ({ ...cause, sentence: sentenceFor(cause) })),
  };
}

function sentenceFor({ kind, minutes, sentence }: ForecastMove['causes'][number]): string {
  if (kind === 'pace') return withoutCrews(sentence);
  return kind === 'progress' ? withoutTimes(sentence, minutes > 0) : sentence;
}

/** "3 min later: Bay 9, left side took longer than planned.", not by how much. */
function withoutTimes(sentence: string, later: boolean): string {
  return sentence
    .replace(
      / took \d+ min in place of \d+/g,
      later ? ' took longer than planned' : ' went quickly',
    )
    .replace(/ is at work for \d+ min in place of \d+/g, ' takes longer than planned');
}

/** "3 min later: the pace is known better.", whoever it was. */
function withoutCrews(sentence: string): string {
  return `${sentence.slice(0, sentence.indexOf(':'))}: the pace is known better.`;
}
