import { useState } from 'react';
import { minutesBetween } from '#domain/progress/instants.ts';
import { Button } from '../../parts/Button.tsx';
import { Stepper } from '../../parts/Stepper.tsx';
import { iso, minutes } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { useCard } from './card.ts';
import { WordsField } from './WordsField.tsx';

/** Loads that are not in yet: one press when a truck is here, a guess in steps of five minutes when it is late. */
export function Loads({ onClose }: { readonly onClose: () => void }) {
  const { state, send } = useCard();
  const [late, setLate] = useState<string | null>(null);
  const said = words.chief.more;
  const expected = state.work.loads.filter(({ id }) => state.loads[id]?.status !== 'in');
  if (late !== null) return <LateLoad load={late} onClose={onClose} />;
  if (expected.length === 0) return <p>{said.noLoads}</p>;
  return (
    <div className="choices">
      {expected.map(({ id, name }) => (
        <Button
          key={id}
          onClick={() => {
            void send('tell-load-in', { load: id });
            onClose();
          }}
        >
          {said.loadHere(name)}
        </Button>
      ))}
      {expected.map(({ id, name }) => (
        <Button key={`late-${id}`} onClick={() => setLate(id)}>
          {said.loadLate(name)}
        </Button>
      ))}
    </div>
  );
}

function LateLoad({ load, onClose }: { readonly load: string; readonly onClose: () => void }) {
  const { state, now, send } = useCard();
  const planned = state.loads[load]?.planned.at;
  const behind = planned ? Math.max(0, minutesBetween(planned, iso(now))) : 0;
  const [by, setBy] = useState(Math.ceil((behind + 5) / 5) * 5);
  const [why, setWhy] = useState('');
  const said = words.chief.more;
  return (
    <>
      <Stepper label={said.loadLateBy} value={by} step={5} most={2880} onChange={setBy} />
      <WordsField label={said.loadWhy} value={why} onChange={setWhy} />
      <Button
        look="solid"
        onClick={() => {
          void send('tell-load-late', { load, minutes: by, why: why.trim() });
          onClose();
        }}
      >
        {said.loadTell(minutes(by))}
      </Button>
    </>
  );
}
