import { memo, useDeferredValue, useMemo } from 'react';
import type { Launching } from '../../../drawing/launchMoment.ts';
import { words } from '../../../words/words.ts';
import { LaunchStages } from '../launch/LaunchStages.tsx';
import { ChoiceList } from './ChoiceList.tsx';
import type { Design } from './useDesign.ts';
import './ground.css';

/** Below the ground and its answer: the choice between bridges, and how the one looked at gets over. */
export function DesignMore({ design }: { readonly design: Design }) {
  // Many drawings: what is typed is shown first.
  return <Below design={useDeferredValue(design)} />;
}

const Below = memo(function Below({ design }: { readonly design: Design }) {
  const { design: answer, ground, kits, work } = design;
  const launching = useMemo(
    (): Launching | null =>
      answer?.ok && kits.kit ? { bridge: answer.value, kit: kits.kit, ground } : null,
    [answer, kits.kit, ground],
  );
  return (
    <div className="stack-wide design-more">
      <ChoiceList design={design} />
      {launching && work ? (
        <details className="quiet design-stages">
          <summary>
            <h2>{words.launch.title}</h2>{' '}
            <span className="second">{words.launch.folded(launching.bridge.stages.length)}</span>
          </summary>
          <section className="stack-wide" aria-label={words.launch.title}>
            <LaunchStages launching={launching} work={work} />
          </section>
        </details>
      ) : null}
    </div>
  );
});
