import { crewLabel, taskLabel } from '#domain/progress/words.ts';
import { type IdleTime, idleTimes } from '#domain/schedule/improve/idleTimes.ts';
import { openingChain } from '#domain/schedule/improve/openingChain.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { PageLink } from '../../../parts/PageLink.tsx';
import { atMinute, clock, iso, minutes } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { useLeader } from '../useLeader.ts';
import { Gains } from './Gains.tsx';
import { planFromNow } from './planFromNow.ts';

/** On demand: the chain that sets the opening, who stands waiting, what one more person would gain. */
export function Reasons({ plan }: { readonly plan: Plan }) {
  const texts = words.reasons;
  return (
    <section className="stack reasons" aria-label={texts.title}>
      <h2>{texts.title}</h2>
      <details className="quiet">
        <summary>{texts.chain}</summary>
        <Chain plan={plan} />
      </details>
      <details className="quiet">
        <summary>{texts.idle}</summary>
        <Idle plan={plan} />
      </details>
      <details className="quiet">
        <summary>{texts.gains}</summary>
        <Gains />
      </details>
    </section>
  );
}

function Chain({ plan }: { readonly plan: Plan }) {
  const { state, now } = useBuild();
  const { toTask } = useLeader();
  const { start, zone, work } = state;
  const steps = openingChain(planFromNow(state, now) ?? plan, work);
  const ahead = steps.filter(({ planned }) => state.tasks[planned.task]?.status !== 'done');
  const done = steps.length - ahead.length;
  return (
    <>
      <p className="second">
        {words.reasons.chainMore} {done > 0 ? words.reasons.chainDone(done) : ''}
      </p>
      <ol className="chain">
        {ahead.map(({ planned, why }) => (
          <li key={planned.task}>
            {clock(atMinute(start, planned.start), zone, iso(now))}{' '}
            <PageLink to={toTask(planned.task)}>{taskLabel(state, planned.task)}</PageLink>{' '}
            <span className="second">{why}</span>
          </li>
        ))}
      </ol>
    </>
  );
}

function Idle({ plan }: { readonly plan: Plan }) {
  const { state, now } = useBuild();
  const texts = words.reasons;
  const at = (minute: number): string => clock(atMinute(state.start, minute), state.zone, iso(now));
  const said = ({ crew, personMinutes, firstWork, lastWork }: IdleTime): string => {
    const name = crewLabel(state, crew);
    const strength = state.work.crews.find(({ id }) => id === crew)?.people ?? 0;
    if (firstWork === null || lastWork === null) return texts.idleNone(name);
    const each = minutes(personMinutes / Math.max(1, strength));
    return texts.idleOne(name, each, at(firstWork), at(lastWork));
  };
  const idle = idleTimes(state.work, plan);
  const platoon = new Set(state.work.crews.filter(({ attached }) => !attached).map(({ id }) => id));
  return (
    <ul>
      {idle
        .filter(({ crew }) => platoon.has(crew))
        .map((one) => (
          <li key={one.crew}>{said(one)}</li>
        ))}
    </ul>
  );
}
