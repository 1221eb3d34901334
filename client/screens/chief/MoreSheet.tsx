import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { Stepper } from '../../parts/Stepper.tsx';
import { words } from '../../words/words.ts';
import { useCard } from './card.ts';
import { Loads } from './Loads.tsx';
import { WordsField } from './WordsField.tsx';

type What = 'hurt' | 'short' | 'near-miss' | 'load';

/** Somebody hurt, parts short, a near miss: what is told seldom and matters. */
export function MoreSheet({ onClose }: { readonly onClose: () => void }) {
  const [what, setWhat] = useState<What | null>(null);
  const said = words.chief.more;
  const titles = {
    hurt: said.hurt,
    short: said.short,
    load: said.load,
    'near-miss': said.nearMiss,
  };
  return (
    <Sheet title={what ? titles[what] : said.title} onClose={onClose}>
      {what === null ? (
        <div className="choices">
          {(['hurt', 'short', 'load', 'near-miss'] as const).map((each) => (
            <Button key={each} onClick={() => setWhat(each)}>
              {titles[each]}
            </Button>
          ))}
        </div>
      ) : null}
      {what === 'hurt' ? <Hurt onClose={onClose} /> : null}
      {what === 'short' ? <Short onClose={onClose} /> : null}
      {what === 'load' ? <Loads onClose={onClose} /> : null}
      {what === 'near-miss' ? <NearMiss onClose={onClose} /> : null}
    </Sheet>
  );
}

function Hurt({ onClose }: { readonly onClose: () => void }) {
  const { crew, send } = useCard();
  const [text, setText] = useState('');
  const said = words.chief.more;
  const tell = (outOfWork: boolean): void => {
    void send('tell-hurt', { crew, what: text.trim(), outOfWork });
    onClose();
  };
  return (
    <>
      <WordsField label={said.hurtWhat} value={text} onChange={setText} />
      <div className="choices">
        <Button look="solid" onClick={() => tell(true)}>
          {said.hurtOut}
        </Button>
        <Button onClick={() => tell(false)}>{said.hurtIn}</Button>
      </div>
    </>
  );
}

function Short({ onClose }: { readonly onClose: () => void }) {
  const { send } = useCard();
  const [part, setPart] = useState('');
  const [count, setCount] = useState(1);
  const said = words.chief.more;
  return (
    <>
      <WordsField label={said.shortPart} value={part} onChange={setPart} />
      <Stepper label={said.shortCount} value={count} least={1} onChange={setCount} />
      <TellWords
        text={part}
        label={said.shortTell(count)}
        onTell={() => {
          void send('tell-short', { part: part.trim(), count });
          onClose();
        }}
      />
    </>
  );
}

function NearMiss({ onClose }: { readonly onClose: () => void }) {
  const { send } = useCard();
  const [text, setText] = useState('');
  const said = words.chief.more;
  return (
    <>
      <p className="second">{said.nearMissStays}</p>
      <WordsField label={said.nearMissWhat} value={text} onChange={setText} />
      <TellWords
        text={text}
        label={said.send}
        onTell={() => {
          void send('tell-near-miss', { what: text.trim() });
          onClose();
        }}
      />
    </>
  );
}

/** Tells, once a few words stand there. */
function TellWords({
  text,
  label,
  onTell,
}: {
  readonly text: string;
  readonly label: string;
  readonly onTell: () => void;
}) {
  const empty = text.trim() === '';
  return (
    <>
      <Button look="solid" disabled={empty} onClick={onTell}>
        {label}
      </Button>
      {empty ? <p className="second small">{words.chief.more.needsWords}</p> : null}
    </>
  );
}
