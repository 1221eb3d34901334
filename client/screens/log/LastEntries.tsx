import { tells } from '#domain/progress/command.ts';
import type { Entry } from '#domain/progress/entry.ts';
import { entryKinds } from '#domain/progress/entry.ts';
import { isUnsent } from '../../data/sender.ts';
import { useBuild } from '../../data/useBuild.ts';
import { useLastEntries } from '../../data/useLastEntries.ts';
import { Button } from '../../parts/Button.tsx';
import { EntryText } from '../../parts/EntryText.tsx';
import { SaidLine } from '../../parts/SaidLine.tsx';
import { useSay } from '../../parts/useSay.ts';
import { entrySentence } from '../../words/entryWords.ts';
import { clock } from '../../words/units.ts';
import { words } from '../../words/words.ts';

const shown = 14;
/** The author of a report may take it back for so long; after that it is the leader's to do. */
const undoFor = 10 * 60_000;

const tellEntries: ReadonlySet<string> = new Set(
  Object.keys(tells)
    .filter((kind) => kind !== 'halt' && kind !== 'withdraw' && kind !== 'tell-near-miss')
    .map((kind) => entryKinds[kind as keyof typeof tells]),
);

/** The last entries of the record, latest first, with undo beside those that the log keeper entered just now. */
export function LastEntries() {
  const { state, you, now } = useBuild();
  const { entries, trouble } = useLastEntries(shown);
  const { said, busy, say } = useSay();
  const mayUndo = ({ number, kind, by, receivedAt }: Entry): boolean =>
    tellEntries.has(kind) &&
    !state.withdrawn.includes(number) &&
    (you.role === 'leader' ||
      (by.role === you.role && by.name === you.name && now - Date.parse(receivedAt) < undoFor));

  return (
    <section className="stack" aria-label={words.log.last}>
      <h2>{words.log.last}</h2>
      {trouble ? (
        <p className="notice">
          {trouble === 'unreachable' ? words.said.unreachable : trouble.sentence}
        </p>
      ) : null}
      {entries === null && !trouble ? <p aria-busy="true">{words.said.fetching}</p> : null}
      {entries?.length === 0 ? <p>{words.log.lastNone}</p> : null}
      <SaidLine said={said} />
      <Unsent />
      <ol className="last-entries">
        {entries?.map((entry) => (
          <li key={entry.number}>
            <EntryText entry={entry} />
            {mayUndo(entry) ? (
              <Button
                look="plain"
                disabled={busy}
                aria-label={words.log.undoOne(entry.number)}
                onClick={() =>
                  void say('withdraw', { entry: entry.number, why: words.log.undoWhy })
                }
              >
                {words.log.undo}
              </Button>
            ) : null}
          </li>
        ))}
      </ol>
    </section>
  );
}

/** What this laptop has not got through yet, so that nobody sends it twice. */
function Unsent() {
  const { state, sendings } = useBuild();
  const open = sendings.filter(isUnsent);
  if (open.length === 0) return null;
  return (
    <ul className="last-entries">
      {open.map((one) => (
        <li key={one.id}>
          <span>
            <time>{clock(one.happenedAt, state.zone)}</time> {entrySentence(state, one)}{' '}
            <strong className="warn">{words.log.unsent}</strong>
          </span>
        </li>
      ))}
    </ul>
  );
}
