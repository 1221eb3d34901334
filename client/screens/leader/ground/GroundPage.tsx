import { wasTold } from '#domain/progress/standing.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { PageLink } from '../../../parts/PageLink.tsx';
import { words } from '../../../words/words.ts';
import { useLeader } from '../useLeader.ts';
import { BridgeAnswer } from './BridgeAnswer.tsx';
import { GroundDesk } from './GroundDesk.tsx';
import { GroundSheet } from './GroundSheet.tsx';
import { SiteFigure } from './SiteFigure.tsx';

/** The ground as measured and the bridge that answers it; to be chosen until work begins, to be looked at afterwards. */
export function GroundPage() {
  const { state } = useBuild();
  const begun = Object.values(state.tasks).some(wasTold);
  const said = words.ground;
  return (
    <div className="stack-wide">
      <h1>{said.title}</h1>
      {begun ? <Chosen /> : <GroundDesk />}
    </div>
  );
}

function Chosen() {
  const { state } = useBuild();
  const { to } = useLeader();
  const { bridge, ground } = state;
  const said = words.ground;
  return (
    <>
      <p className="notice no-print">{said.begun}</p>
      <div className="row no-print">
        {bridge?.manner === 'launched' ? (
          <PageLink to={to('launch')} className="button">
            {words.launch.stopped.linkShort}
          </PageLink>
        ) : null}
        <Button onClick={() => window.print()}>{words.launch.print}</Button>
      </div>
      {ground ? <SiteFigure ground={ground} bridge={bridge} /> : null}
      {bridge ? (
        <BridgeAnswer
          bridge={bridge}
          wanted={ground?.loadClass ?? bridge.loadClass}
          roomBehind={ground?.roomBehind ?? null}
        />
      ) : null}
      {bridge && bridge.unknowns.length > 0 ? (
        <section className="notice stack">
          <h3>{said.unknowns}</h3>
          <ul className="listed">
            {bridge.unknowns.map((unknown) => (
              <li key={unknown}>{unknown}</li>
            ))}
          </ul>
        </section>
      ) : null}
      {ground ? <GroundSheet ground={ground} /> : null}
    </>
  );
}
