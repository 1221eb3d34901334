import { useState } from 'react';
import { lightOf } from '#domain/brief/light.ts';
import { isProven, rounding } from '#domain/schedule/proven.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { CrewColumns } from '../../../drawing/CrewColumns.tsx';
import { atMinute, clock, iso, minutes } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { DraftList } from '../draft/DraftList.tsx';
import { Accepted } from './Accepted.tsx';
import { OfferNotice } from './OfferNotice.tsx';
import { PlanAgain } from './PlanAgain.tsx';
import { Reasons } from './Reasons.tsx';
import { TouchedTask } from './TouchedTask.tsx';

/** The plan in force as crew columns, the changes to try, and planning again. */
export function PlanPage() {
  const { state, now } = useBuild();
  const [touched, setTouched] = useState<string | null>(null);
  const { plan, start, zone, ground } = state;
  const texts = words.plan;
  const time = (minute: number): string => clock(atMinute(start, minute), zone, iso(now));
  const dusk = ground?.place ? lightOf(ground.place, iso(now)).sunset : null;
  return (
    <>
      <h1>{texts.title}</h1>
      {plan ? (
        <p>
          {state.planAcceptedAt
            ? texts.number(state.planCount, clock(state.planAcceptedAt, zone, iso(now)))
            : ''}{' '}
          {texts.opens(time(plan.minutesToOpen))}{' '}
          {isProven(plan)
            ? texts.boundMet
            : texts.bound(minutes(Math.ceil(plan.minutesToOpen - plan.lowerBound - rounding)))}
        </p>
      ) : (
        <p className="lead">
          {texts.none} {state.work.tasks.length > 0 ? texts.noneMore : ''}
        </p>
      )}
      <Accepted />
      <OfferNotice />
      <div className={plan ? 'plan-board' : 'plan-board plan-first'}>
        <DraftList />
        <PlanAgain />
      </div>
      {plan ? <Reasons plan={plan} /> : null}
      {plan ? (
        <section className="stack">
          <h2>{texts.columns}</h2>
          <CrewColumns state={state} now={now} dusk={dusk} onTask={setTouched} />
          <TouchedTask task={touched} onClose={() => setTouched(null)} />
        </section>
      ) : null}
    </>
  );
}
