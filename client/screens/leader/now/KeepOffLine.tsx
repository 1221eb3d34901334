import { isAtWork } from '#domain/progress/standing.ts';
import { keepOffCheck } from '#domain/progress/views/keepOff.ts';
import { taskLabel } from '#domain/progress/words.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { PageLink } from '../../../parts/PageLink.tsx';
import { iso } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { nextKeepOff } from '../../log/likely.ts';
import { useLeader } from '../useLeader.ts';

/** The next keep-off task in one line: how much of what must be so before it starts is so. */
export function KeepOffLine() {
  const { state, now } = useBuild();
  const { toTask } = useLeader();
  const task = nextKeepOff(state);
  if (!task) return null;
  const standing = state.tasks[task.id];
  const name = taskLabel(state, task.id);
  if (standing && isAtWork(standing)) {
    return (
      <p className="notice">
        <strong>{words.leader.keepOffRuns(name)}</strong>{' '}
        <PageLink to={toTask(task.id)}>{words.leader.openTask}</PageLink>
      </p>
    );
  }
  const conditions = keepOffCheck(state, task.id, iso(now));
  const met = conditions.filter((one) => one.met).length;
  return (
    <p className="notice">
      {words.leader.keepOffNext(name, met, conditions.length)}{' '}
      <PageLink to={toTask(task.id)}>{words.leader.keepOffOpen}</PageLink>
    </p>
  );
}
