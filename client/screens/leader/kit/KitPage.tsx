import { useId, useMemo, useState } from 'react';
import type { Kit } from '#domain/kit/kit.ts';
import { liftNotes } from '#domain/kit/teamLift.ts';
import { ChoiceFigure, choiceReach } from '../../../drawing/ChoiceFigure.tsx';
import { FaultList } from '../../../parts/FaultList.tsx';
import { Field } from '../../../parts/Field.tsx';
import { metres } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { PartsFigure } from './PartsFigure.tsx';
import { readKitText, sampleBridge } from './readKitText.ts';
import './kit.css';

/** Checks a kit file, names each fault by its path, and draws what the kit is. */
export function KitPage() {
  const [text, setText] = useState('');
  const read = useMemo(() => readKitText(text), [text]);
  const file = useId();
  const said = words.kitFile;
  return (
    <div className="stack-wide kit-page">
      <h1>{said.title}</h1>
      <p className="lead no-print">{said.lead}</p>
      <div className="stack no-print">
        <Field label={said.text} hint={said.hint}>
          {(ties) => (
            <textarea
              {...ties}
              rows={8}
              spellCheck={false}
              value={text}
              onChange={(event) => setText(event.target.value)}
            />
          )}
        </Field>
        <label htmlFor={file} className="small">
          {said.file}
        </label>
        <input
          id={file}
          type="file"
          accept=".json,application/json"
          onChange={(event) => {
            const [chosen] = event.target.files ?? [];
            void chosen?.text().then(setText);
          }}
        />
      </div>
      <div role="status">
        {read.is === 'no-json' ? <p className="notice warn">{read.sentence}</p> : null}
        {read.is === 'faulty' ? <h2>{said.faults(read.faults.length)}</h2> : null}
        {read.is === 'good' ? <h2>{said.good(read.kit.title)}</h2> : null}
      </div>
      {read.is === 'faulty' ? <FaultList faults={read.faults} /> : null}
      {read.is === 'good' ? <GoodKit kit={read.kit} /> : null}
    </div>
  );
}

function GoodKit({ kit }: { readonly kit: Kit }) {
  const sample = useMemo(() => sampleBridge(kit), [kit]);
  const notes = liftNotes(kit);
  const said = words.kitFile;
  const length = (bays: number) => said.length(bays, metres(bays * kit.bay.length));
  const launching = sample && { ...sample, kit };
  const caption = sample
    ? said.sample(sample.bridge.bays, metres(sample.bridge.length), metres(sample.ground.gap))
    : said.noSample;
  return (
    <>
      {kit.notForUse ? <p className="notice warn">{said.notForUse}</p> : null}
      <p>{said.bays(kit.manner, length(kit.bay.least), length(kit.bay.most))}.</p>
      <p>{said.source(kit.source)}</p>
      <section className="stack" aria-label={caption}>
        <h3>{caption}</h3>
        {launching ? (
          <ChoiceFigure launching={launching} reach={choiceReach([launching])} label={caption} />
        ) : null}
      </section>
      <PartsFigure kit={kit} />
      {notes.length > 0 ? (
        <section className="stack" aria-label={said.notes}>
          <h3>{said.notes}</h3>
          <ul className="listed">
            {notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </section>
      ) : null}
      <p className="second small">{words.planningAid}</p>
    </>
  );
}
