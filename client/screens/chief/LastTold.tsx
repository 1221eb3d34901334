import { isUnsent, type Sending } from '../../data/sender.ts';
import { useBuild } from '../../data/useBuild.ts';
import { entrySentence } from '../../words/entryWords.ts';
import { clock } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { useCard } from './card.ts';
import { useUndoable } from './undoable.ts';

/** What became of the last tick, always in sight. */
export function LastTold() {
  const { sendings, skew } = useBuild();
  const { state } = useCard();
  const undoable = useUndoable();
  const said = words.chief.last;
  const last = sendings.findLast(({ kind }) => kind !== 'start-keep-off');
  const open = sendings.filter(isUnsent);
  return (
    <div className="last-told" role="status">
      {last ? (
        <p className={last.state === 'recorded' || last.state === 'sending' ? '' : 'warn'}>
          {entrySentence(state, last)}, {clock(Date.parse(last.happenedAt) + skew, state.zone)}:{' '}
          <strong>{stateWords(last)}</strong>
        </p>
      ) : undoable ? (
        <p>
          {entrySentence(state, undoable)}, {clock(undoable.receivedAt, state.zone)}:{' '}
          <strong>{said.recorded(undoable.entry)}</strong>
        </p>
      ) : (
        <p className="second">{said.none}</p>
      )}
      {open.length > 1 ? <p className="warn">{said.unsent(open.length)}</p> : null}
    </div>
  );
}

function stateWords(one: Sending): string {
  const said = words.chief.last;
  if (one.takenBack) return said.takenBack;
  if (one.state === 'sending') return said.sending;
  if (one.state === 'waiting') return said.waiting;
  if (one.receipt?.outcome === 'recorded') return said.recorded(one.receipt.entry);
  if (one.receipt?.outcome === 'refused') return said.refused(one.receipt.sentence);
  return words.sending.noAnswer;
}
