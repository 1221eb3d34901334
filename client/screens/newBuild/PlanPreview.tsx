import { useMemo } from 'react';
import { healthOf } from '#domain/tasks/health/healthOf.ts';
import type { Work } from '#domain/tasks/work.ts';
import { usePlanning } from '../../data/planning/usePlanning.ts';
import { Button } from '../../parts/Button.tsx';
import { FindingList } from '../../parts/FindingList.tsx';
import { minutes } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import '../../look/search.css';

/** Seconds that the device searches unless it is stopped or the plan is proven. */
const longest = 60;

/** How soon an order of work from tables would open, planned on the device; and whether it is sound. */
export function PlanPreview({ work }: { readonly work: Work }) {
  const { planning, begin, end } = usePlanning();
  const { step, best, refused } = planning;
  const texts = words.preview;
  const crews = work.crews.length > 0;
  const findings = useMemo(() => healthOf(work, { shape: 'pert', crews }), [work, crews]);
  return (
    <section className="stack plan-preview" aria-label={texts.title}>
      <h3>{texts.title}</h3>
      <p className="second reading">
        {texts.more} {crews ? '' : texts.free}
      </p>
      <div className="row">
        <Button
          disabled={step === 'working'}
          onClick={() => begin({ kind: 'search', work, seconds: longest })}
        >
          {step === 'none' ? texts.ask : texts.again}
        </Button>
        {step === 'working' ? (
          <>
            <progress aria-label={texts.title} />
            <Button onClick={end}>{texts.stop}</Button>
          </>
        ) : null}
      </div>
      <div role="status" className="stack">
        {best ? (
          <p className="search-line">
            <strong>{texts.best(minutes(best.plan.minutesToOpen))}</strong>{' '}
            {best.news.proven
              ? words.plan.searchProven
              : texts.bound(minutes(Math.floor(best.plan.lowerBound)))}
          </p>
        ) : null}
        {step === 'working' && !best ? <p>{texts.begins}</p> : null}
        {refused ? <p className="warn">{refused}</p> : null}
        {step === 'failed' ? <p className="warn">{texts.failed}</p> : null}
      </div>
      {findings.length === 0 ? <p>{words.health.none}</p> : <FindingList findings={findings} />}
    </section>
  );
}
