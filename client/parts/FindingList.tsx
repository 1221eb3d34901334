import type { ReactNode } from 'react';
import type { Finding } from '#domain/tasks/health/finding.ts';
import { words } from '../words/words.ts';
import '../look/search.css';

/** Most tasks of one finding that are named by a link of their own. */
const mostLinks = 8;

type Props = {
  readonly findings: readonly Finding[];
  /** Shows one of the tasks concerned; left out, the sentences alone name them. */
  readonly task?: (task: string) => ReactNode;
};

/** Findings of an order of work: the gravest first, each with what to do, and where the checks come from on demand. */
export function FindingList({ findings, task }: Props) {
  const texts = words.health;
  const sources = [...new Set(findings.map(({ source }) => source))];
  return (
    <div className="stack findings">
      {(['stops', 'mend', 'look'] as const).map((weight) => {
        const some = findings.filter((finding) => finding.weight === weight);
        return some.length === 0 ? null : (
          <section key={weight} className="stack" aria-label={texts[weight]}>
            <h3>{texts[weight]}</h3>
            <ul>
              {some.map(({ kind, sentence, tasks }) => (
                <li key={`${kind} ${tasks.join(' ')}`}>
                  <p className={weight === 'stops' ? 'warn' : ''}>{sentence}</p>
                  {task ? <Concerned tasks={tasks} task={task} /> : null}
                </li>
              ))}
            </ul>
          </section>
        );
      })}
      {sources.length > 0 ? (
        <details className="quiet">
          <summary>{texts.where}</summary>
          <ul className="second small">
            {sources.map((source) => (
              <li key={source}>{source}</li>
            ))}
          </ul>
        </details>
      ) : null}
    </div>
  );
}

type ConcernedProps = {
  readonly tasks: readonly string[];
  readonly task: (task: string) => ReactNode;
};

function Concerned({ tasks, task }: ConcernedProps) {
  const rest = tasks.length - mostLinks;
  return (
    <p className="row finding-tasks">
      {tasks.slice(0, mostLinks).map(task)}
      {rest > 0 ? <span className="second">{words.health.more(rest)}</span> : null}
    </p>
  );
}
