import { useRef, useState } from 'react';
import { words } from '../words/words.ts';
import { Button } from './Button.tsx';

type Props = {
  readonly label: string;
  readonly text: string;
  readonly rows?: number;
};

/** A text to copy. Where the browser lets nobody copy for you (plain HTTP on a site network), it is marked to be copied by hand. */
export function CopyText({ label, text, rows }: Props) {
  const [state, setState] = useState<'none' | 'copied' | 'marked'>('none');
  const field = useRef<HTMLTextAreaElement>(null);

  async function copy(): Promise<void> {
    try {
      await navigator.clipboard.writeText(text);
      setState('copied');
    } catch {
      field.current?.focus();
      field.current?.select();
      setState('marked');
    }
  }

  return (
    <div className="copy-text field">
      <textarea ref={field} readOnly aria-label={label} rows={rows ?? 2} value={text} />
      <div className="row">
        <Button onClick={() => void copy()} aria-label={words.copy.button(label)}>
          {words.copy.short}
        </Button>
        <span role="status">
          {state === 'copied' ? words.copy.copied : ''}
          {state === 'marked' ? words.copy.marked : ''}
        </span>
      </div>
    </div>
  );
}
