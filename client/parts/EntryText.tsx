import type { Entry } from '#domain/progress/entry.ts';
import { useBuild } from '../data/useBuild.ts';
import { entrySentence } from '../words/entryWords.ts';
import { clock } from '../words/units.ts';
import { words } from '../words/words.ts';

/** One entry of the record in words: its number, when it happened, what, who said it, and what it broke. */
export function EntryText({ entry }: { readonly entry: Entry }) {
  const { state } = useBuild();
  const { number, happenedAt, by, saidBy, breaches } = entry;
  const withdrawn = state.withdrawn.includes(number);
  return (
    <div className="entry-text">
      <span className="entry-number">{number}</span> <time>{clock(happenedAt, state.zone)}</time>{' '}
      {withdrawn ? (
        <>
          <s>{entrySentence(state, entry)}</s> <strong>{words.record.withdrawn}</strong>
        </>
      ) : (
        <span>{entrySentence(state, entry)}</span>
      )}{' '}
      <span className="second small">
        {saidBy ? words.record.saidBy(saidBy, by.name) : words.record.by(by.name)}
      </span>
      {breaches?.map(({ sentence }) => (
        <p key={sentence} className="warn">
          {words.said.breach(sentence)}
        </p>
      ))}
    </div>
  );
}
