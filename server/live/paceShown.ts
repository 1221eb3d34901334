import { playedTasks } from '#domain/forecast/after/played.ts';
import { crewPaces } from '#domain/forecast/learn/paceWords.ts';
import { paceSeen } from '#domain/forecast/moves/seen.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { seenNow } from '#domain/progress/views/seenNow.ts';
import type { PaceReply } from '#shared/wireForecast.ts';

/** The pace of each crew from what was told until `now` (ISO 8601 UTC), for the leader; nobody's before there is a plan. */
export function paceShown(state: BuildState, now: string): PaceReply {
  if (state.plan === null) return { crews: [], inOneGo: 0 };
  const seen = seenNow(state, state.plan, now);
  const { work, plan, doubts } = seen;
  const played = playedTasks(work, plan, doubts.ticks ?? [], doubts);
  const names = new Map(work.crews.map(({ id, name }) => [id, name]));
  const own = work.crews.filter(({ attached }) => !attached);
  return {
    crews: crewPaces(paceSeen(seen), own).map((pace) => ({
      ...pace,
      name: names.get(pace.crew) ?? pace.crew,
      tasks: played.filter(({ crews }) => crews.includes(pace.crew)).length,
    })),
    inOneGo: played.filter(({ trust }) => trust < 1).length,
  };
}
