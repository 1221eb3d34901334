import { crewLabel, taskLabel } from '#domain/progress/words.ts';
import type { RefusalReply } from '#shared/wire.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { FaultList } from '../../../parts/FaultList.tsx';
import { PageLink } from '../../../parts/PageLink.tsx';
import { withNumbers } from '../../../parts/taskNumbers.ts';
import { words } from '../../../words/words.ts';
import { useLeader } from '../useLeader.ts';

/** Why no plan could be made, and the way to whatever has to change: the tasks and crews it is about. */
export function RefusedPlan({ refusal }: { readonly refusal: RefusalReply }) {
  const { state } = useBuild();
  const { to, toTask } = useLeader();
  const { tasks, crews } = state.work;
  const of = new Set(refusal.of ?? []);
  const texts = words.plan;
  return (
    <>
      <p className="warn">{words.said.refused(withNumbers(state.work, refusal.sentence))}</p>
      <FaultList faults={refusal.faults ?? []} />
      <p className="row">
        {crews
          .filter(({ id }) => of.has(id))
          .map(({ id }) => (
            <PageLink key={id} to={to('hours')} className="button">
              {texts.lendTo(crewLabel(state, id))}
            </PageLink>
          ))}
        {tasks
          .filter(({ id }) => of.has(id))
          .map(({ id }) => (
            <PageLink key={id} to={toTask(id)} className="button">
              {texts.changeTask(taskLabel(state, id))}
            </PageLink>
          ))}
      </p>
    </>
  );
}
