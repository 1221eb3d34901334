import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { percent } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { useDraft } from '../draft/DraftContext.ts';
import { Comparison } from './Comparison.tsx';
import { HealthFindings } from './HealthFindings.tsx';
import { RefusedPlan } from './RefusedPlan.tsx';
import { SearchUnderWay } from './SearchUnderWay.tsx';

/** Asks for a plan with the changes, shows how far it is, and what it would do; nothing is recorded until accepted. */
export function PlanAgain() {
  const { state, jobs } = useBuild();
  const { changes, faults, trial } = useDraft();
  const texts = words.plan;
  const at = trial.state;
  const job = at.step === 'planning' ? jobs[at.id] : undefined;
  const first = state.plan === null;
  const why =
    state.work.tasks.length === 0 ? texts.noWork : faults.length > 0 ? texts.faultsFirst : null;
  return (
    <section className="stack plan-again" aria-label={texts.again}>
      <h2>{first ? texts.make : texts.again}</h2>
      {why ? <p className="warn">{why}</p> : null}
      {state.work.crews.length === 0 && state.work.tasks.length > 0 ? <p>{texts.noCrews}</p> : null}
      <div className="row">
        <Button
          look={at.step === 'made' ? 'line' : 'solid'}
          disabled={why !== null || at.step === 'planning'}
          onClick={() => void trial.plan(changes)}
        >
          {first ? texts.make : texts.again}
        </Button>
        <Button
          disabled={why !== null || at.step === 'planning'}
          onClick={() => void trial.search(changes)}
        >
          {first ? texts.searchFirst : texts.search}
        </Button>
        {at.step === 'planning' && !at.search ? (
          <>
            <progress
              max={1}
              value={job ? job.done / job.of : undefined}
              aria-label={texts.planning}
            />
            <Button onClick={trial.drop}>{texts.stop}</Button>
          </>
        ) : null}
      </div>
      {at.step === 'none' && why === null ? <p className="second small">{texts.twoWays}</p> : null}
      {at.step === 'planning' && at.search ? <SearchUnderWay id={at.id} /> : null}
      <div role="status">
        {at.step === 'planning' && !at.search ? (
          <p>{job ? texts.planningFar(percent(job.done / job.of)) : texts.planning}</p>
        ) : null}
        {at.step === 'stopped' ? <p>{texts.stopped}</p> : null}
        {at.step === 'unreachable' ? <p className="warn">{texts.unreachable}</p> : null}
        {at.step === 'refused' ? <RefusedPlan refusal={at.refusal} /> : null}
      </div>
      <HealthFindings />
      {at.step === 'made' ? <Comparison key={at.proposal.proposal} proposal={at.proposal} /> : null}
    </section>
  );
}
