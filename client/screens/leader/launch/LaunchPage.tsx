import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { PageLink } from '../../../parts/PageLink.tsx';
import { words } from '../../../words/words.ts';
import { useLeader } from '../useLeader.ts';
import { LaunchStages } from './LaunchStages.tsx';
import { useLaunching } from './useLaunching.ts';

/** The stages of the launch of the build's bridge. */
export function LaunchPage() {
  const { state } = useBuild();
  const { to } = useLeader();
  const launching = useLaunching();
  const said = words.launch;
  return (
    <div className="stack-wide">
      <h1>{said.title}</h1>
      {typeof launching === 'string' ? (
        <p className="notice">{launching}</p>
      ) : (
        <>
          <div className="row no-print">
            <PageLink to={to('launch/stopped')} className="button">
              {said.stopped.title}
            </PageLink>
            <Button onClick={() => window.print()}>{said.print}</Button>
          </div>
          <h2 className="out-of-sight">{said.each}</h2>
          <LaunchStages launching={launching} work={state.work} />
        </>
      )}
    </div>
  );
}
