import { useEffect, useRef, useState } from 'react';
import { openingHeadline } from '#domain/brief/opening.ts';
import type { Forecast } from '#domain/forecast/forecast.ts';
import { crewLabel, inWords } from '#domain/progress/words.ts';
import type { Proposal } from '#shared/wire.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { OpeningStrip } from '../../../drawing/OpeningStrip.tsx';
import { Button } from '../../../parts/Button.tsx';
import { SaidLine } from '../../../parts/SaidLine.tsx';
import { useSay } from '../../../parts/useSay.ts';
import { atMinute, clock, iso, minutes, unbroken, upperFirst } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { useDraft } from '../draft/DraftContext.ts';
import { weakCrews } from '../now/needs.ts';
import { gainWords } from './gain.ts';
import { MovesList } from './MovesList.tsx';
import { planFromNow } from './planFromNow.ts';

/** The plan in force and the one on trial side by side, what it gains, what moves; to be accepted or dropped. */
export function Comparison({ proposal }: { readonly proposal: Proposal }) {
  const { state, now } = useBuild();
  const { trial } = useDraft();
  const { said, busy, say } = useSay();
  const texts = words.plan;
  const { plan, forecast, before, gain, offer, basis } = proposal;
  // Held still while the leader looks: the comparison is with the moment it was made for.
  const [inForce] = useState(() => planFromNow(state, now));
  const stale = basis < state.workNumber;
  // What the plan in force counts on and no longer has: its times beside the new ones would be believed.
  const [weak] = useState(() => (before ? weakCrews(state, iso(now), new Set()) : []));

  const whole = useRef<HTMLElement>(null);
  // What was asked for comes in sight where it would begin at the lower edge.
  useEffect(() => {
    const top = whole.current?.getBoundingClientRect().top ?? 0;
    if (top > window.innerHeight / 2) whole.current?.scrollIntoView();
  }, []);

  async function accept(): Promise<void> {
    const sent = await say('accept-plan', { proposal: proposal.proposal });
    if (sent.outcome === 'recorded') trial.accepted();
  }

  return (
    <section ref={whole} className="comparison stack-wide" aria-label={texts.compare}>
      <h3 className="comparison-gain">
        {before ? texts.gained(upperFirst(gain)) : texts.firstPlan(minutes(plan.minutesToOpen))}
      </h3>
      {before ? <p>{gainWords(before.forecast, forecast, state.confidence, state.start)}</p> : null}
      {offer && offer.crews.length > 0 ? (
        <p>{texts.hear(inWords(offer.crews.map((crew) => crewLabel(state, crew))))}</p>
      ) : null}
      {plan.minutesToOpen <= plan.lowerBound + 1 / 120 ? <p>{texts.searchProven}</p> : null}
      <div className="side-by-side">
        {before ? (
          <section className="stack" aria-label={texts.before}>
            <h4>{texts.before}</h4>
            <Opening
              forecast={before.forecast}
              opening={inForce?.minutesToOpen ?? before.minutesToOpen}
            />
            {weak.map(({ key, sentence }) => (
              <p key={key} className="warn">
                {sentence}
              </p>
            ))}
          </section>
        ) : null}
        <section className="stack" aria-label={texts.after}>
          <h4>{texts.after}</h4>
          <Opening forecast={forecast} opening={plan.minutesToOpen} />
        </section>
      </div>
      {inForce ? <MovesList before={inForce} after={plan} /> : null}
      {stale ? <p className="notice warn">{texts.stale}</p> : null}
      <div className="row">
        <Button look="solid" disabled={busy || stale} onClick={() => void accept()}>
          {texts.accept}
        </Button>
        <Button onClick={trial.drop}>{texts.drop}</Button>
      </div>
      <SaidLine said={said} />
    </section>
  );
}

type OpeningProps = { readonly forecast: Forecast; readonly opening: number };

function Opening({ forecast, opening }: OpeningProps) {
  const { state, now } = useBuild();
  const { start, zone, askedFor } = state;
  const said = openingHeadline(forecast, state, iso(now));
  return (
    <>
      <p className="comparison-headline">{unbroken(said.headline)}</p>
      <p>{[said.even, said.asked].filter((sentence) => sentence !== null).join(' ')}</p>
      <p className="second">
        {words.plan.planned(clock(atMinute(start, opening), zone, iso(now)))}
      </p>
      <OpeningStrip openings={forecast.openings} askedFor={askedFor} start={start} zone={zone} />
    </>
  );
}
