import { type ReactNode, useId, useRef, useState } from 'react';
import { Button } from '../../../parts/Button.tsx';
import { HoursRow } from './HoursRow.tsx';
import { freshKey } from './hoursForm.ts';

type Line = { readonly key: number };

type Props<One extends Line> = {
  readonly title: string;
  readonly more: string;
  readonly none: string;
  /** What a line is called, by its place. */
  readonly name: (number: number) => string;
  readonly add: string;
  readonly lines: readonly One[];
  readonly blank: Omit<One, 'key'>;
  readonly onChange: (lines: readonly One[]) => void;
  readonly children: (line: One, set: (change: Partial<One>) => void) => ReactNode;
};

/** A list in the form to which lines are added and out of which they are taken; the keyboard stays where it was. */
export function HoursLines<One extends Line>(props: Props<One>) {
  const { title, more, none, name, add, lines, blank, onChange, children } = props;
  const id = useId();
  const [fresh, setFresh] = useState<number | null>(null);
  const part = useRef<HTMLElement>(null);

  function addLine(): void {
    const key = freshKey(lines);
    setFresh(key);
    onChange([...lines, { ...blank, key } as One]);
  }

  function takeOut(line: One): void {
    onChange(lines.filter((one) => one !== line));
    part.current?.querySelector<HTMLElement>('.hours-add')?.focus();
  }

  return (
    <section ref={part} className="stack hours-part" aria-labelledby={id}>
      <h3 id={id}>{title}</h3>
      {lines.length === 0 ? <p>{none}</p> : null}
      {lines.map((line, at) => (
        <HoursRow
          key={line.key}
          name={name(at + 1)}
          fresh={line.key === fresh}
          onRemove={() => takeOut(line)}
        >
          {children(line, (change) =>
            onChange(lines.map((one) => (one === line ? { ...one, ...change } : one))),
          )}
        </HoursRow>
      ))}
      <p>
        <Button className="hours-add" onClick={addLine}>
          {add}
        </Button>
      </p>
      <p className="second small">{more}</p>
    </section>
  );
}
