import { SpanFigure } from '../../../drawing/SpanFigure.tsx';
import { words } from '../../../words/words.ts';
import { BridgeAnswer } from './BridgeAnswer.tsx';
import { SiteFigure } from './SiteFigure.tsx';
import type { Design } from './useDesign.ts';

/** The side view as it grows, and the bridge; or every limit that binds, with what would free it. */
export function DesignAnswer({ design }: { readonly design: Design }) {
  const { preview, site, ground, design: answer } = design;
  const texts = words.ground;
  return (
    <>
      {preview ? <SpanFigure state={preview} /> : site ? <SiteFigure ground={site} /> : null}
      <div aria-live="polite" className="stack-wide">
        {answer === null ? <p className="lead">{texts.fillFirst}</p> : null}
        {answer && !answer.ok ? (
          <section className="notice strong stack">
            <h2>{texts.refused}</h2>
            <p>{texts.refusedMore}</p>
            <ul className="listed">
              {answer.reason.map(({ sentence }) => (
                <li key={sentence}>{sentence}</li>
              ))}
            </ul>
          </section>
        ) : null}
        {answer?.ok && ground ? (
          <BridgeAnswer
            bridge={answer.value}
            wanted={ground.loadClass}
            roomBehind={ground.roomBehind}
          />
        ) : null}
      </div>
    </>
  );
}
