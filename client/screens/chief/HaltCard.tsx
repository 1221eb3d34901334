import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { HaltNotice } from '../../parts/HaltNotice.tsx';
import { clock } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { useCard } from './card.ts';
import { CountSheet } from './KeepOffNext.tsx';
import { Tick } from './Tick.tsx';

/** While a halt is on: what to do, and the head count that answers it. */
export function HaltCard() {
  const { state, crew, fit, send, awake, press } = useCard();
  const [counting, setCounting] = useState(false);
  const said = words.chief.haltCard;
  const told = state.halt?.acknowledged[crew];
  const whole = told !== undefined && told.people >= told.of;
  const tell = (people: number): void => void send('acknowledge-halt', { crew, people, of: fit });
  return (
    <div className="halt-card">
      <HaltNotice>
        <p className="lead">
          <strong>{said.title}</strong>
        </p>
        {told ? (
          <p className={whole ? '' : 'warn'}>
            {said.told(told.people, told.of, clock(told.at, state.zone))}
            {whole ? '' : ` ${said.missing}`}
          </p>
        ) : (
          <Tick
            mark="done"
            label={said.loadsDown}
            about={said.clear(fit, fit)}
            onPress={() => tell(fit)}
          />
        )}
        <Button disabled={!awake} onClick={() => press(() => setCounting(true))}>
          {told ? said.again : said.other}
        </Button>
      </HaltNotice>
      {counting ? (
        <CountSheet
          title={said.countTitle}
          first={told?.people ?? fit}
          of={fit}
          label={(count) => said.tell(count, fit)}
          onTell={tell}
          onClose={() => setCounting(false)}
        />
      ) : null}
    </div>
  );
}
