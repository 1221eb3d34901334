import { type KeyboardEvent, useId, useMemo, useRef, useState } from 'react';
import { useBuild } from '../../data/useBuild.ts';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { SaidLine } from '../../parts/SaidLine.tsx';
import { useSay } from '../../parts/useSay.ts';
import { words } from '../../words/words.ts';
import { ReadingLine } from './ReadingLine.tsx';
import type { Reading } from './reading.ts';
import { readLine } from './readLine.ts';

/** One line for everything that comes by radio. What it may mean stands below in words; Enter sends the marked one. */
export function EntryLine() {
  const { told, now, skew, you, send } = useBuild();
  const { said, say, clear } = useSay();
  const [line, setLine] = useState('');
  const [speaker, setSpeaker] = useState('');
  const [at, setAt] = useState<number | null>(null);
  const input = useRef<HTMLInputElement>(null);
  const list = useId();
  const readings = useMemo(() => readLine(line, { state: told, now, you }), [line, told, now, you]);
  // Enter alone sends what was said; what is only guessed has to be chosen first.
  const first = readings[0]?.guess ? -1 : 0;
  const chosen = at === null ? first : Math.min(at, readings.length - 1);

  function enter(reading: Reading | undefined): void {
    if (!reading?.meant) return;
    const by = speaker.trim() || reading.by;
    const { kind, body } = reading.meant;
    const extra = {
      ...(by && { saidBy: by.slice(0, 60) }),
      ...(reading.at !== null && { happenedAt: new Date(reading.at - skew).toISOString() }),
    };
    // A halt goes round the queue and round the live line: nothing may hold it up.
    void (kind === 'halt' ? send(kind, body, extra) : say(kind, body, extra));
    setLine('');
    setSpeaker('');
    setAt(null);
    input.current?.focus();
  }

  function onKey(event: KeyboardEvent<HTMLInputElement>): void {
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault();
      const step = event.key === 'ArrowDown' ? 1 : -1;
      const count = Math.max(1, readings.length);
      setAt(chosen < 0 && step < 0 ? count - 1 : (chosen + step + count) % count);
    } else if (event.key === 'Escape') {
      setLine('');
      setAt(null);
      clear();
    }
  }

  return (
    <form
      className="entry-line"
      onSubmit={(event) => {
        event.preventDefault();
        enter(readings[chosen]);
      }}
    >
      <Field label={words.log.line} hint={words.log.lineHint} className="entry-line-main">
        {(ties) => (
          <input
            {...ties}
            ref={input}
            // biome-ignore lint/a11y/noAutofocus: the page is this line; a log keeper opens it to type
            autoFocus
            role="combobox"
            aria-expanded={readings.length > 0}
            aria-controls={list}
            aria-autocomplete="list"
            aria-activedescendant={readings[chosen] ? `${list}-${chosen}` : undefined}
            autoComplete="off"
            autoCapitalize="off"
            spellCheck={false}
            enterKeyHint="send"
            placeholder={words.log.lineExample}
            value={line}
            onChange={(event) => {
              setLine(event.target.value);
              setAt(null);
            }}
            onKeyDown={onKey}
          />
        )}
      </Field>
      <Field label={words.log.saidBy} hint={words.log.saidByHint} className="entry-line-by">
        {(ties) => (
          <input
            {...ties}
            autoComplete="off"
            maxLength={60}
            value={speaker}
            onChange={(event) => setSpeaker(event.target.value)}
          />
        )}
      </Field>
      <Button
        type="submit"
        look="solid"
        className="entry-line-send"
        disabled={!readings[chosen]?.meant}
      >
        {words.log.send}
      </Button>
      <SaidLine said={said} className="entry-line-said" />
      {readings.length > 0 ? (
        <div id={list} role="listbox" aria-label={words.log.readings} className="readings">
          {readings.map((reading, index) => (
            // biome-ignore lint/a11y/useKeyWithClickEvents: keys go to the line above, which names the marked one
            <div
              key={reading.sentence}
              id={`${list}-${index}`}
              role="option"
              tabIndex={-1}
              aria-selected={index === chosen}
              aria-disabled={reading.meant === null}
              onClick={() => enter(reading)}
            >
              <ReadingLine reading={reading} speaker={speaker.trim()} />
            </div>
          ))}
        </div>
      ) : null}
      {line.trim() !== '' && readings.length === 0 ? (
        <p className="warn" role="status">
          {words.log.noReading}
        </p>
      ) : null}
    </form>
  );
}
