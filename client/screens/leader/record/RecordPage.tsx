import { useState } from 'react';
import { useLastEntries } from '../../../data/useLastEntries.ts';
import { Button } from '../../../parts/Button.tsx';
import { EntryText } from '../../../parts/EntryText.tsx';
import { words } from '../../../words/words.ts';
import { type RecordCheck, useRecordCheck } from './useRecordCheck.ts';

const step = 50;
/** The server gives no more at once. */
const most = 500;
/** Enough of a hash to read aloud and compare. */
const shortHash = 12;

/** The end of the record with numbers, times, who told it and what it broke; and whether its chain holds. */
export function RecordPage() {
  const [count, setCount] = useState(step);
  const { entries, head, trouble } = useLastEntries(count);
  const [check, start] = useRecordCheck();
  const texts = words.records;
  return (
    <>
      <h1>{texts.title}</h1>
      <p className="second reading">{texts.more}</p>
      <div className="row">
        <Button disabled={check.step === 'checking'} onClick={start}>
          {texts.check}
        </Button>
        <p className="second">
          {texts.checkMore} {head ? texts.ends(head.number, head.hash.slice(0, shortHash)) : ''}
        </p>
      </div>
      <p role="status" className={check.step === 'bad' ? 'warn' : ''}>
        {checkWords(check)}
      </p>
      {trouble ? (
        <p className="notice">
          {trouble === 'unreachable' ? words.said.unreachable : trouble.sentence}
        </p>
      ) : null}
      {entries === null && !trouble ? <p aria-busy="true">{words.said.fetching}</p> : null}
      {entries?.length === 0 ? <p>{texts.none}</p> : null}
      <ol className="record-list">
        {entries?.map((entry) => (
          <li key={entry.number}>
            <EntryText entry={entry} />
          </li>
        ))}
      </ol>
      {entries && entries.length === count && count < most ? (
        <p>
          <Button onClick={() => setCount(Math.min(most, count + step))}>{texts.older}</Button>
        </p>
      ) : null}
    </>
  );
}

function checkWords(check: RecordCheck): string {
  const texts = words.records;
  switch (check.step) {
    case 'none':
      return '';
    case 'cannot':
      return texts.cannot;
    case 'unreachable':
      return texts.unreachable;
    case 'checking':
      return texts.checking(check.done, check.of);
    case 'good':
      return texts.good(check.count, check.hash.slice(0, shortHash));
    case 'bad':
      return texts.bad(check.number);
  }
}
