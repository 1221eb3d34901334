import { strengthOf } from '#domain/progress/views/strength.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { SaidLine } from '../../../parts/SaidLine.tsx';
import { useSay } from '../../../parts/useSay.ts';
import { words } from '../../../words/words.ts';
import { CrewItem } from './CrewItem.tsx';
import { LoadItem } from './LoadItem.tsx';
import { NewCrew } from './NewCrew.tsx';

/** Who is here, how many of them fit, and what stores have come: to be told now, and to be changed for the plan. */
export function CrewsPage() {
  const { state } = useBuild();
  const { said, busy, say } = useSay();
  const { fit, planned } = strengthOf(state);
  const texts = words.crews;
  return (
    <>
      <h1>{texts.title}</h1>
      <SaidLine said={said} />
      <div className="crews-board">
        <section className="stack" aria-label={texts.crews}>
          <h2>
            {texts.crews}, {texts.strength(fit, planned)}
          </h2>
          {state.work.crews.length === 0 ? <p>{texts.none}</p> : null}
          <ul className="items">
            {state.work.crews.map((crew) => (
              <CrewItem key={crew.id} crew={crew} say={say} busy={busy} />
            ))}
          </ul>
          <NewCrew />
        </section>
        <section className="stack" aria-label={texts.loads}>
          <h2>{texts.loads}</h2>
          {state.work.loads.length === 0 ? <p>{texts.noLoads}</p> : null}
          <ul className="items">
            {state.work.loads.map((load) => (
              <LoadItem key={load.id} load={load} say={say} busy={busy} />
            ))}
          </ul>
        </section>
      </div>
    </>
  );
}
