import { type ReactNode, useEffect, useId, useRef } from 'react';
import { words } from '../words/words.ts';
import { Button } from './Button.tsx';

type Props = {
  readonly title: string;
  readonly onClose: () => void;
  /** What the way out is called; "Leave it" by default. */
  readonly leave?: string;
  readonly children: ReactNode;
};

/** One question laid over the page. Escape and the last button leave it; focus comes back to where it was. */
export function Sheet({ title, onClose, leave = words.cancel, children }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  const titleId = useId();

  useEffect(() => {
    const before = document.activeElement;
    dialog.current?.showModal();
    return () => {
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);

  return (
    <dialog
      ref={dialog}
      className="sheet"
      aria-labelledby={titleId}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <div className="sheet-body">
        <h2 id={titleId}>{title}</h2>
        {children}
        <Button onClick={onClose}>{leave}</Button>
      </div>
    </dialog>
  );
}
