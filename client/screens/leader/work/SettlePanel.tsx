import { taskLabel } from '#domain/progress/words.ts';
import type { Task } from '#domain/tasks/task.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { SaidLine } from '../../../parts/SaidLine.tsx';
import { useSay } from '../../../parts/useSay.ts';
import { words } from '../../../words/words.ts';

/** The leader decides between two tells about one task. */
export function SettlePanel({ task }: { readonly task: Task }) {
  const { state } = useBuild();
  const { said, busy, say } = useSay();
  const settle = (status: 'done' | 'stopped') => void say('settle-task', { task: task.id, status });
  return (
    <section className="notice strong stack">
      <h2>{words.task.settle}</h2>
      <p>{words.leader.disputed(taskLabel(state, task.id))}</p>
      <div className="row">
        <Button disabled={busy} onClick={() => settle('done')}>
          {words.leader.settleDone}
        </Button>
        <Button disabled={busy} onClick={() => settle('stopped')}>
          {words.leader.settleStopped}
        </Button>
      </div>
      <SaidLine said={said} />
    </section>
  );
}
