import { useMemo } from 'react';
import { minutesAskedFor, workAsTold } from '#domain/progress/views/asTold.ts';
import { pastOf } from '#domain/progress/views/past.ts';
import { taskLabel } from '#domain/progress/words.ts';
import { applyChanges } from '#domain/tasks/change.ts';
import { healthOf } from '#domain/tasks/health/healthOf.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { FindingList } from '../../../parts/FindingList.tsx';
import { PageLink } from '../../../parts/PageLink.tsx';
import { withNumbers } from '../../../parts/taskNumbers.ts';
import { iso } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { useDraft } from '../draft/DraftContext.ts';
import { useLeader } from '../useLeader.ts';

/** What to mend or look at in the order of work, with the changes on trial made, before its plan is trusted. */
export function HealthFindings() {
  const { state, now } = useBuild();
  const { changes } = useDraft();
  const { toTask } = useLeader();
  const minute = Math.floor(now / 60_000) * 60_000;
  const findings = useMemo(() => {
    const asTold = workAsTold(state);
    const changed = applyChanges(asTold, changes);
    const work = changed.ok ? changed.value : asTold;
    return healthOf(work, {
      shape: state.plan?.shape ?? 'pert',
      crews: work.crews.length > 0,
      askedFor: minutesAskedFor(state),
      plan: state.plan,
      past: pastOf(state, iso(minute)),
    });
  }, [state, changes, minute]);
  if (state.work.tasks.length === 0) return null;
  const toMend = findings.filter(({ weight }) => weight !== 'look').length;
  const toLookAt = findings.length - toMend;
  const said = [
    ...(toMend > 0 ? [words.health.toMend(toMend)] : []),
    ...(toLookAt > 0 ? [words.health.toLookAt(toLookAt)] : []),
  ].join(', ');
  return (
    <details className="quiet health" open={findings.some(({ weight }) => weight === 'stops')}>
      <summary>
        {words.health.title}{' '}
        <span className="second">{said === '' ? words.health.none : `${said}.`}</span>
      </summary>
      <FindingList
        findings={findings.map((one) => ({
          ...one,
          sentence: withNumbers(state.work, one.sentence),
        }))}
        task={(task) => (
          <PageLink key={task} to={toTask(task)} className="finding-task">
            {taskLabel(state, task)}
          </PageLink>
        )}
      />
    </details>
  );
}
