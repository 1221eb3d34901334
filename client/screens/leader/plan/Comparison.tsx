import { useEffect, useRef, useState } from 'react';
import { openingHeadline } from '#domain/brief/opening.ts';
import type { Forecast } from '#domain/forecast/forecast.ts';
import { crewLabel, inWords } from '#domain/progress/words.ts';
import { minuteShown } from '#domain/schedule/improve/offer.ts';
import { isProven } from '#domain/schedule/proven.ts';
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
  const { plan, forecast, before, gain, offer, basis, madeFor } = proposal;
  // Held still while the leader looks: both plans are seen from the moment that the new one was made for.
  const [inForce] = useState(() => planFromNow(state, Date.parse(madeFor)));
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
      {before ? (
        <p>
          {offer?.needed === false ? `${texts.gainedBy} ` : ''}
          {gainWords(before.forecast, forecast, state.confidence, state.start)}
        </p>
      ) : null}
      {offer && offer.crews.length > 0 ? (
        <p>{texts.hear(inWords(offer.crews.map((crew) => crewLabel(state, crew))))}</p>
      ) : null}
      {isProven(plan) ? <p>{texts.searchProven}</p> : null}
      <div className="side-by-side">
        {before ? (
          <section className="stack" aria-label={texts.before}>
            <h4>{texts.before}</h4>
            <Opening forecast={before.forecast} opening={offer?.acceptedOpens ?? null} />
            {weak.map(({ key, sentence }) => (
              <p key={key} className="warn">
                {sentence}
              </p>
            ))}
          </section>
        ) : null}
        <section className="stack" aria-label={texts.after}>
          <h4>{texts.after}</h4>
          <Opening forecast={forecast} opening={offer?.opens ?? plan.minutesToOpen} />
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

/** `opening` by planned minutes, after the start; null where nothing can be said of it. */
type OpeningProps = { readonly forecast: Forecast; readonly opening: number | null };

function Opening({ forecast, opening }: OpeningProps) {
  const { state, now } = useBuild();
  const { start, zone, askedFor } = state;
  const said = openingHeadline(forecast, state, iso(now));
  return (
    <>
      <p className="comparison-headline">{unbroken(said.headline)}</p>
      <p>{[said.even, said.asked].filter((sentence) => sentence !== null).join(' ')}</p>
      {opening === null ? null : (
        <p className="second">
          {words.plan.planned(clock(atMinute(start, minuteShown(opening)), zone, iso(now)))}
        </p>
      )}
      <OpeningStrip openings={forecast.openings} askedFor={askedFor} start={start} zone={zone} />
    </>
  );
}
