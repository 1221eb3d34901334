import { taskLabel } from '#domain/progress/words.ts';
import type { Task } from '#domain/tasks/task.ts';
import { useBuild } from '../../data/useBuild.ts';
import { words } from '../../words/words.ts';

/** The finished work that comes back when a hold fails. */
export function RedoList({ task }: { readonly task: Task }) {
  const { state } = useBuild();
  const done = (task.hold?.redo ?? []).filter(
    (id) => id !== task.id && state.tasks[id]?.status === 'done',
  );
  if (done.length === 0) return <p>{words.inspector.comesBackNone}</p>;
  return (
    <div className="stack">
      <p>{words.inspector.comesBack}</p>
      <ul className="stack-tight listed">
        {done.map((id) => (
          <li key={id}>{taskLabel(state, id)}</li>
        ))}
      </ul>
    </div>
  );
}
