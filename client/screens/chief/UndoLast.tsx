import { Button } from '../../parts/Button.tsx';
import { entrySentence } from '../../words/entryWords.ts';
import { words } from '../../words/words.ts';
import { useCard } from './card.ts';
import { useUndoable } from './undoable.ts';

/** Takes the last tell back, within ten minutes. The record keeps both. */
export function UndoLast() {
  const { state, send, awake, press } = useCard();
  const undoable = useUndoable();
  if (!undoable) return null;
  const said = words.chief.last;
  const { entry } = undoable;
  return (
    <section className="undo">
      <p>{entrySentence(state, undoable)}</p>
      <Button
        disabled={!awake}
        aria-label={`${said.undo}: ${entrySentence(state, undoable)}`}
        onClick={() => press(() => void send('withdraw', { entry, why: said.undoWhy }))}
      >
        {said.undo}
      </Button>
    </section>
  );
}
