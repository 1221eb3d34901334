import type { Concession } from '#domain/progress/command.ts';
import type { Measure } from '#domain/tasks/hold.ts';
import { faultInWords, type Read } from '#domain/tasks/measured.ts';
import { Button } from '../../parts/Button.tsx';
import { words } from '../../words/words.ts';
import { ConcessionForm } from './ConcessionForm.tsx';

type Props = {
  readonly measures: readonly Measure[];
  readonly values: Readonly<Record<string, Read>>;
  /** Null while nobody says that there is one. */
  readonly concession: Concession | null;
  readonly tried: boolean;
  readonly onChange: (concession: Concession | null) => void;
};

const blank: Concession = { name: '', authority: '', reason: '' };

/** What lies outside a hard limit, that nobody on site sets it aside, and where a concession is entered. */
export function Beyond({ measures, values, concession, tried, onChange }: Props) {
  const said = words.inspector;
  return (
    <section className="notice strong stack-wide" aria-label={said.beyondTitle}>
      <div className="stack">
        <h3>{said.beyondTitle}</h3>
        <ul className="listed">
          {measures.map((measure) => (
            <li key={measure.key}>{faultInWords(measure, values[measure.key])}</li>
          ))}
        </ul>
        <p>{said.beyondMore}</p>
      </div>
      <p>
        <Button
          aria-expanded={concession !== null}
          onClick={() => onChange(concession === null ? blank : null)}
        >
          {said.concede}
        </Button>
      </p>
      {concession === null ? null : <ConcessionForm {...{ concession, tried, onChange }} />}
    </section>
  );
}
