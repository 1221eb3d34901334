import { useState } from 'react';
import { conditionsSentence, conditionsUsed } from '#domain/forecast/doubt/conditions.ts';
import type { Doubt } from '#domain/forecast/doubt/doubt.ts';
import { sourcesOfDoubt } from '#domain/forecast/doubt/sources.ts';
import { doubtInForce } from '#domain/progress/views/doubtInForce.ts';
import { useBuild } from '../../data/useBuild.ts';
import { SaidLine } from '../../parts/SaidLine.tsx';
import { useSay } from '../../parts/useSay.ts';
import { factor, upperFirst } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { DoubtItem } from './DoubtItem.tsx';
import { DoubtTrialBar } from './DoubtTrialBar.tsx';
import { changesBetween } from './doubtDraft.ts';

/** Every source of doubt and every condition, with its figure, where that comes from, and for the leader a switch. */
export function DoubtSection() {
  const { state, you } = useBuild();
  const { said, busy, say } = useSay();
  const [draft, setDraft] = useState<Doubt | null>(null);
  const texts = words.forecast.doubt;
  const inForce = doubtInForce(state);
  const doubt = draft ?? inForce;
  const changes = draft ? changesBetween(inForce, draft) : 0;
  const change =
    you.role === 'leader'
      ? (next: Doubt): void => setDraft(changesBetween(inForce, next) === 0 ? null : next)
      : null;

  async function save(wanted: Doubt): Promise<void> {
    const sent = await say('set-doubt', { doubt: wanted });
    if (sent.outcome === 'recorded') setDraft(null);
  }

  const sources = sourcesOfDoubt(doubt);
  return (
    <section className="stack doubt" aria-labelledby="forecast-doubt">
      <h2 id="forecast-doubt">{texts.title}</h2>
      <p className="second small">{change ? texts.more : texts.read}</p>
      {state.doubt ? null : <p>{texts.usual}</p>}
      <div className="doubt-lists">
        <div>
          <h3>{texts.sources}</h3>
          <ul>
            {sources.map((source) => (
              <DoubtItem
                key={source.event ?? source.kind}
                of={
                  source.kind === 'event'
                    ? { part: 'event', id: source.event ?? '' }
                    : { part: source.kind }
                }
                name={upperFirst(source.name)}
                on={source.on}
                value={source.words}
                source={source.source}
                doubt={doubt}
                onChange={change}
              />
            ))}
          </ul>
        </div>
        <div>
          <h3>{texts.conditions}</h3>
          <p className="second small">{texts.rule}</p>
          <p role="status">{conditionsSentence(doubt)}</p>
          <ul>
            {conditionsUsed(doubt).map((condition) => (
              <DoubtItem
                key={condition.name}
                of={{ part: condition.name }}
                name={texts.names[condition.name]}
                on={condition.on}
                value={[
                  texts.times(factor(condition.factor)),
                  condition.words,
                  ...(condition.name === 'heat'
                    ? [texts.wbgt(factor(doubt.heat.wbgt), texts.fields.efforts[doubt.heat.effort])]
                    : []),
                ].join(', ')}
                source={condition.source}
                doubt={doubt}
                onChange={change}
              />
            ))}
          </ul>
        </div>
      </div>
      {draft ? (
        <DoubtTrialBar
          doubt={draft}
          changes={changes}
          busy={busy}
          onSave={() => void save(draft)}
          onDrop={() => setDraft(null)}
        />
      ) : null}
      <SaidLine said={said} />
    </section>
  );
}
