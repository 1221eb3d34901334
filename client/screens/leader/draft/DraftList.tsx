import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { FaultList } from '../../../parts/FaultList.tsx';
import { words } from '../../../words/words.ts';
import { changeSentence } from './changeWords.ts';
import { useDraft } from './DraftContext.ts';

/** The changes to try, in words, each of which can be taken out again. */
export function DraftList() {
  const { state } = useBuild();
  const { changes, faults, remove, clear } = useDraft();
  const said = words.leader.draft;
  return (
    <section className="stack" aria-label={said.title}>
      <h2>{said.title}</h2>
      {changes.length === 0 ? <p>{state.plan ? said.none : said.noneYet}</p> : null}
      <ul className="draft-list">
        {changes.map((change) => {
          const sentence = changeSentence(state, change);
          return (
            <li key={JSON.stringify(change)}>
              <span>{sentence}</span>
              <Button
                look="plain"
                aria-label={said.removeOne(sentence)}
                onClick={() => remove(change)}
              >
                {said.remove}
              </Button>
            </li>
          );
        })}
      </ul>
      {faults.length > 0 ? (
        <div className="notice strong" role="alert">
          <p>{said.faults}</p>
          <FaultList faults={faults} />
        </div>
      ) : null}
      {changes.length > 1 ? (
        <p>
          <Button look="plain" onClick={clear}>
            {said.clear}
          </Button>
        </p>
      ) : null}
    </section>
  );
}
