import { useState } from 'react';
import { keepOffCheck } from '#domain/progress/views/keepOff.ts';
import { Button } from '../../parts/Button.tsx';
import { SaidLine } from '../../parts/SaidLine.tsx';
import { useSay } from '../../parts/useSay.ts';
import { iso } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { ClearSheet } from './ClearSheet.tsx';
import { useCard } from './card.ts';

/** The start of a keep-off task: every condition in words, met or not, and the ask. Never a clearance. */
export function KeepOffAsk({ task }: { readonly task: string }) {
  const { state, now, awake, press } = useCard();
  const { said: answer, busy, say } = useSay();
  const [clearing, setClearing] = useState(false);
  const said = words.chief.keepOff;
  const conditions = keepOffCheck(state, task, iso(now));
  const unmet = conditions.filter(({ met }) => !met);
  return (
    <section className="keep-off stack">
      <h3>{said.conditions}</h3>
      <ul className="conditions">
        {unmet.map(({ kind, of, sentence }) => (
          <li key={`${kind}.${of}`}>
            <Box met={false} />
            <span>{sentence}</span>
          </li>
        ))}
        {unmet.length === 0 ? (
          <li>
            <Box met />
            <span>{said.allMet}</span>
          </li>
        ) : null}
      </ul>
      {unmet.length < conditions.length && unmet.length > 0 ? (
        <details>
          <summary>{words.chief.keepOff.metAlready(conditions.length - unmet.length)}</summary>
          <ul className="conditions">
            {conditions
              .filter(({ met }) => met)
              .map(({ kind, of, sentence }) => (
                <li key={`${kind}.${of}`}>
                  <Box met />
                  <span>{sentence}</span>
                </li>
              ))}
          </ul>
        </details>
      ) : null}
      <p className="second">{said.askMore}</p>
      <Button className="wide" disabled={!awake} onClick={() => press(() => setClearing(true))}>
        {said.seeClear}
      </Button>
      <Button
        look={unmet.length > 0 ? 'line' : 'solid'}
        className="wide ask"
        disabled={!awake || busy}
        onClick={() => press(() => void say('start-keep-off', { task }))}
      >
        {unmet.length > 0 ? `${said.ask} · ${said.unmet(unmet.length)}` : said.ask}
      </Button>
      <SaidLine said={answer} />
      {clearing ? <ClearSheet task={task} onClose={() => setClearing(false)} /> : null}
    </section>
  );
}

function Box({ met }: { readonly met: boolean }) {
  return (
    <svg className="hold-box" viewBox="0 0 18 18" aria-hidden="true">
      <rect className={met ? 'box-met' : 'box-open'} x="1.5" y="1.5" width="15" height="15" />
      {met ? <path className="box-tick" d="m4.5 9.5 3 3 6-7" /> : null}
    </svg>
  );
}
