import { orderIndex } from '#domain/progress/orderIndex.ts';
import { taskLabel } from '#domain/progress/words.ts';
import type { Task } from '#domain/tasks/task.ts';
import type { Link } from '#domain/tasks/work.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { PageLink } from '../../../parts/PageLink.tsx';
import { TaskMark } from '../../../parts/TaskMark.tsx';
import { minutes } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { useDraft } from '../draft/DraftContext.ts';
import { useLeader } from '../useLeader.ts';
import { AddLink } from './AddLink.tsx';

/** What a task comes after and what comes after it, with the changes gathered so far. */
export function EditLinks({ task, open }: { readonly task: Task; readonly open: boolean }) {
  const { state } = useBuild();
  const { work, add } = useDraft();
  const texts = words.task;
  const now = orderIndex(state.work);
  const drafted = orderIndex(work);
  const before = drafted.before.get(task.id) ?? [];
  const after = drafted.after.get(task.id) ?? [];
  const isNew = (link: Link): boolean =>
    !(now.before.get(link.to) ?? []).some((one) => JSON.stringify(one) === JSON.stringify(link));
  return (
    <>
      <section className="stack" aria-label={texts.after}>
        <h3>{texts.after}</h3>
        {before.length === 0 ? <p>{texts.afterNone}</p> : null}
        <ul>
          {before.map((link) => (
            <li key={`${link.from} ${link.counts} ${link.wait}`} className="link-line">
              <LinkEnd id={link.from} link={link} fresh={isNew(link)} />
              {open ? (
                <Button
                  look="plain"
                  aria-label={texts.removeLinkOf(taskLabel(state, link.from))}
                  onClick={() => add({ kind: 'link-remove', from: link.from, to: task.id })}
                >
                  {texts.removeLink}
                </Button>
              ) : null}
            </li>
          ))}
        </ul>
        {open ? <AddLink task={task} /> : null}
      </section>
      {after.length > 0 ? (
        <section className="stack" aria-label={texts.before}>
          <h3>{texts.before}</h3>
          <ul>
            {after.map((link) => (
              <li key={`${link.to} ${link.counts} ${link.wait}`} className="link-line">
                <LinkEnd id={link.to} link={link} fresh={isNew(link)} />
              </li>
            ))}
          </ul>
        </section>
      ) : null}
    </>
  );
}

type EndProps = { readonly id: string; readonly link: Link; readonly fresh: boolean };

function LinkEnd({ id, link, fresh }: EndProps) {
  const { state } = useBuild();
  const { toTask } = useLeader();
  const texts = words.task;
  const { counts, wait } = link;
  const more = [
    ...(counts === 'start' ? [texts.fromStart] : []),
    ...(wait > 0 ? [texts.wait(minutes(wait))] : []),
    ...(wait < 0 ? [texts.early(minutes(-wait))] : []),
    ...(fresh ? [texts.inDraft] : []),
  ];
  return (
    <span className="link-end">
      <TaskMark status={state.tasks[id]?.status ?? 'to-come'} />
      <span>
        <PageLink to={toTask(id)}>{taskLabel(state, id)}</PageLink>
        {more.length > 0 ? <span className="second">, {more.join(', ')}</span> : null}
      </span>
    </span>
  );
}
