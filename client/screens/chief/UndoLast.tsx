import { tells } from '#domain/progress/command.ts';
import { isOpen, type Sending } from '../../data/sender.ts';
import { useBuild } from '../../data/useBuild.ts';
import { Button } from '../../parts/Button.tsx';
import { entrySentence } from '../../words/entryWords.ts';
import { words } from '../../words/words.ts';
import { useCard } from './card.ts';
import { useUndoable } from './undoable.ts';

/** Takes the last tell back, within ten minutes. The record keeps both. */
export function UndoLast() {
  const { state, send, awake, press } = useCard();
  const { sendings, takeBack } = useBuild();
  const undoable = useUndoable();
  const said = words.chief.last;
  // The last press is what a finger slipped on, also while it is still on its way.
  const open = sendings.findLast(isTakenBackHere);
  const last = open ?? undoable;
  if (!last) return null;
  const undo = (): void => {
    if (open) takeBack(open.id, said.undoWhy);
    else if (undoable) void send('withdraw', { entry: undoable.entry, why: said.undoWhy });
  };
  return (
    <section className="undo">
      <p>{entrySentence(state, last)}</p>
      <Button
        disabled={!awake}
        aria-label={`${said.undo}: ${entrySentence(state, last)}`}
        onClick={() => press(undo)}
      >
        {said.undo}
      </Button>
    </section>
  );
}

/** Whether a report without an answer can be taken back: no halt, no near miss, and nothing twice. */
function isTakenBackHere(one: Sending): boolean {
  const stays = one.kind === 'halt' || one.kind === 'tell-near-miss' || one.kind === 'withdraw';
  return isOpen(one) && one.kind in tells && !stays && !one.takenBack;
}
