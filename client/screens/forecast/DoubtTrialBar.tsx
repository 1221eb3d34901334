import { openingHeadline } from '#domain/brief/opening.ts';
import type { Doubt } from '#domain/forecast/doubt/doubt.ts';
import type { Forecast } from '#domain/forecast/forecast.ts';
import { openedOf } from '#domain/progress/views/opened.ts';
import { useBuild } from '../../data/useBuild.ts';
import { OpeningStrip } from '../../drawing/OpeningStrip.tsx';
import { Button } from '../../parts/Button.tsx';
import { iso } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { gainWords } from '../leader/plan/gain.ts';
import { useDoubtTrial } from './useDoubtTrial.ts';

type Props = {
  readonly doubt: Doubt;
  readonly changes: number;
  readonly busy: boolean;
  readonly onSave: () => void;
  readonly onDrop: () => void;
};

/** What the changes would do to the opening, before they are saved. It stays in sight while switches are tried. */
export function DoubtTrialBar({ doubt, changes, busy, onSave, onDrop }: Props) {
  const { state, forecast } = useBuild();
  const trial = useDoubtTrial(doubt);
  const said = words.forecast.doubt.trial;
  const none = openedOf(state).open
    ? said.open
    : state.plan === null || !forecast?.forecast
      ? said.noPlan
      : null;
  return (
    <section className="doubt-trial stack no-print" aria-label={said.title}>
      <p role="status">
        <span className="second">{said.changed(changes)}</span>{' '}
        <strong>
          {none ??
            (trial
              ? gainWords(trial.before, trial.after, state.confidence, state.start)
              : said.reckoning)}
        </strong>
      </p>
      <div className="row">
        <Button look="solid" disabled={busy} onClick={onSave}>
          {said.save}
        </Button>
        <Button onClick={onDrop}>{said.drop}</Button>
      </div>
      {trial ? (
        <details className="quiet">
          <summary>{said.title}</summary>
          <div className="two-fields">
            <Opening title={said.before} forecast={trial.before} />
            <Opening title={said.after} forecast={trial.after} />
          </div>
        </details>
      ) : null}
    </section>
  );
}

type OpeningProps = { readonly title: string; readonly forecast: Forecast };

function Opening({ title, forecast }: OpeningProps) {
  const { state, now } = useBuild();
  const { headline, even } = openingHeadline(forecast, state, iso(now));
  return (
    <section className="stack-tight" aria-label={title}>
      <h3>{title}</h3>
      <p>
        <strong>{headline}.</strong> {even}
      </p>
      <OpeningStrip
        openings={forecast.openings}
        askedFor={state.askedFor}
        start={state.start}
        zone={state.zone}
      />
    </section>
  );
}
