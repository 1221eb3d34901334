import type { Task } from '#domain/tasks/task.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import type { Say } from '../../../parts/useSay.ts';
import { words } from '../../../words/words.ts';

type Props = {
  readonly task: Task;
  /** The crews that do it together. */
  readonly crews: readonly string[];
  readonly say: Say['say'];
  readonly busy: boolean;
};

/** Started or done by every crew of a joint task at once, as after orders to everybody: a tell for each, in turn. */
export function TellForAll({ task, crews, say, busy }: Props) {
  const { state } = useBuild();
  const texts = words.task;
  // A keep-off task is asked for and told crew by crew: heads are counted meanwhile.
  if (crews.length < 2 || task.keepOff || task.hold) return null;
  const statusOf = (crew: string): string =>
    state.tasks[task.id]?.shares.find((one) => one.crew === crew)?.status ?? 'to-come';
  const toStart = crews.filter((crew) => statusOf(crew) === 'to-come');
  // A crew that stopped takes up or finishes its own share: one press for all must not say it is done.
  const anyStopped = crews.some((crew) => statusOf(crew) === 'stopped');
  const toFinish = anyStopped ? [] : crews.filter((crew) => statusOf(crew) !== 'done');

  async function tell(kind: 'tell-started' | 'tell-finished', who: readonly string[]) {
    for (const crew of who) {
      const sent = await say(kind, { task: task.id, crew });
      // What went wrong stands below; the rest is told once it is mended.
      if (sent.outcome !== 'recorded') return;
    }
  }

  return (
    <div className="row">
      {toStart.length > 1 ? (
        <Button disabled={busy} onClick={() => void tell('tell-started', toStart)}>
          {texts.startedAll(toStart.length)}
        </Button>
      ) : null}
      {toFinish.length > 1 ? (
        <Button disabled={busy} onClick={() => void tell('tell-finished', toFinish)}>
          {texts.finishedAll(toFinish.length)}
        </Button>
      ) : null}
    </div>
  );
}
