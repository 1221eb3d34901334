import { useState } from 'react';
import { lightOf } from '#domain/brief/light.ts';
import { plannedTask } from '#domain/progress/plannedCrews.ts';
import { taskLabel } from '#domain/progress/words.ts';
import { reasonSentence } from '#domain/schedule/reasonSentence.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { CrewColumns } from '../../../drawing/CrewColumns.tsx';
import { Button } from '../../../parts/Button.tsx';
import { PageLink } from '../../../parts/PageLink.tsx';
import { atMinute, clock, iso, percent } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { DraftList } from '../draft/DraftList.tsx';
import { useLeader } from '../useLeader.ts';
import { OfferNotice } from './OfferNotice.tsx';
import { PlanAgain } from './PlanAgain.tsx';
import { Reasons } from './Reasons.tsx';

/** The plan in force as crew columns, the changes to try, and planning again. */
export function PlanPage() {
  const { state, now } = useBuild();
  const [touched, setTouched] = useState<string | null>(null);
  const { plan, start, zone, ground } = state;
  const texts = words.plan;
  const time = (minute: number): string => clock(atMinute(start, minute), zone, start);
  const dusk = ground?.place ? lightOf(ground.place, iso(now)).sunset : null;
  const over = plan && plan.lowerBound > 0 ? plan.minutesToOpen / plan.lowerBound - 1 : 0;
  return (
    <>
      <h1>{texts.title}</h1>
      {plan ? (
        <p>
          {state.planAcceptedAt
            ? texts.number(state.planCount, clock(state.planAcceptedAt, zone, start))
            : ''}{' '}
          {texts.opens(time(plan.minutesToOpen))}{' '}
          {over < 0.005
            ? texts.boundMet(time(plan.lowerBound))
            : texts.bound(time(plan.lowerBound), percent(over))}
        </p>
      ) : (
        <p className="lead">
          {texts.none} {state.work.tasks.length > 0 ? texts.noneMore : ''}
        </p>
      )}
      <OfferNotice />
      <div className="plan-board">
        <DraftList />
        <PlanAgain />
      </div>
      {plan ? <Reasons plan={plan} /> : null}
      {plan ? (
        <section className="stack">
          <h2>{texts.columns}</h2>
          <Touched task={touched} onClose={() => setTouched(null)} />
          <CrewColumns state={state} now={now} dusk={dusk} onTask={setTouched} />
        </section>
      ) : null}
    </>
  );
}

type TouchedProps = { readonly task: string | null; readonly onClose: () => void };

/** Why the touched task cannot start earlier, and the way to it. It stays in sight while the columns scroll. */
function Touched({ task, onClose }: TouchedProps) {
  const { state } = useBuild();
  const { toTask } = useLeader();
  const planned = task === null ? undefined : plannedTask(state.plan, task);
  return (
    <div role="status" className="touched">
      {task !== null && planned ? (
        <p className="row">
          <span>
            {words.plan.reason(taskLabel(state, task), reasonSentence(state.work, planned.reason))}
          </span>
          <PageLink to={toTask(task)} className="button">
            {words.plan.openTask}
          </PageLink>
          <Button onClick={onClose}>{words.close}</Button>
        </p>
      ) : null}
    </div>
  );
}
