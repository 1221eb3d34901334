import { plannedTask } from '#domain/progress/plannedCrews.ts';
import { taskLabel } from '#domain/progress/words.ts';
import { reasonSentence } from '#domain/schedule/reasonSentence.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { PageLink } from '../../../parts/PageLink.tsx';
import { atMinute, clock } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { useLeader } from '../useLeader.ts';
import { crewsWords } from '../work/crewsWords.ts';
import { planFromNow } from './planFromNow.ts';

type Props = { readonly task: string | null; readonly onClose: () => void };

/** The task touched on the board: its whole name, when, by whom, why not earlier, and the way to it. */
export function TouchedTask({ task, onClose }: Props) {
  const { state, now } = useBuild();
  const { toTask } = useLeader();
  const planned = task === null ? undefined : plannedTask(state.plan, task);
  const one = state.work.tasks.find(({ id }) => id === task);
  const texts = words.plan;
  // As the board draws it: no earlier than what has been told lets it.
  const runs =
    task === null ? null : planFromNow(state, now)?.tasks.find((run) => run.task === task);
  const time = (minute: number): string => clock(atMinute(state.start, minute), state.zone);
  return (
    <div role="status" className="touched">
      {one && planned && runs ? (
        <div className="touched-task">
          <p>
            <strong>{taskLabel(state, one.id)}</strong>{' '}
            {texts.touched(time(runs.start), time(runs.finish), crewsWords(state, one))}{' '}
            {texts.reason(reasonSentence(state.work, planned.reason))}
          </p>
          <p className="row">
            <PageLink to={toTask(one.id)} className="button">
              {texts.openTask}
            </PageLink>
            <Button onClick={onClose}>{words.close}</Button>
          </p>
        </div>
      ) : null}
    </div>
  );
}
