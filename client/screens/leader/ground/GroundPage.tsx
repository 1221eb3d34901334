import { wasTold } from '#domain/progress/standing.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { SpanFigure } from '../../../drawing/SpanFigure.tsx';
import { words } from '../../../words/words.ts';
import { BridgeAnswer } from './BridgeAnswer.tsx';
import { GroundDesk } from './GroundDesk.tsx';

/** The ground as measured and the bridge that answers it; to be chosen until work begins, to be looked at afterwards. */
export function GroundPage() {
  const { state } = useBuild();
  const begun = Object.values(state.tasks).some(wasTold);
  const said = words.ground;
  return (
    <>
      <h1>{said.title}</h1>
      {begun ? (
        <div className="stack-wide">
          <p className="notice">{said.begun}</p>
          <SpanFigure state={state} />
          {state.bridge ? (
            <BridgeAnswer
              bridge={state.bridge}
              wanted={state.ground?.loadClass ?? state.bridge.loadClass}
              roomBehind={state.ground?.roomBehind ?? null}
            />
          ) : null}
        </div>
      ) : (
        <GroundDesk />
      )}
    </>
  );
}
