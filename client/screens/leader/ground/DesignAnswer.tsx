import { Button } from '../../../parts/Button.tsx';
import { words } from '../../../words/words.ts';
import { BridgeAnswer } from './BridgeAnswer.tsx';
import { rankChoices } from './choiceOrder.ts';
import { GroundNotes } from './GroundNotes.tsx';
import { SiteFigure } from './SiteFigure.tsx';
import { keyOf } from './useChoiceTimes.ts';
import type { Design } from './useDesign.ts';

/** The side view as it grows, and the bridge; or every limit that binds, with what would free it. */
export function DesignAnswer({ design }: { readonly design: Design }) {
  const { site, ground, design: answer } = design;
  const texts = words.ground;
  const bridge = answer?.ok ? answer.value : null;
  return (
    <>
      {site ? <SiteFigure ground={site} bridge={bridge} /> : null}
      <div aria-live="polite" className="stack-wide">
        {answer === null ? <p className="lead">{texts.fillFirst}</p> : null}
        {answer && !answer.ok ? (
          <section className="notice strong stack">
            <h2>{texts.refused}</h2>
            <ul className="listed">
              {answer.reason.map(({ sentence }) => (
                <li key={sentence}>{sentence}</li>
              ))}
            </ul>
            <p className="second">{texts.refusedMore}</p>
          </section>
        ) : null}
        {bridge && ground ? (
          <BridgeAnswer bridge={bridge} wanted={ground.loadClass} roomBehind={ground.roomBehind} />
        ) : null}
        {bridge ? <WantedOther design={design} /> : null}
        <GroundNotes design={design} />
      </div>
    </>
  );
}

/** Where the bridge that is looked at is not the wanted one: which that is, and a way to it. */
function WantedOther({ design }: { readonly design: Design }) {
  const { facts, times, design: answer } = design;
  const said = words.choice;
  const wanted = rankChoices(facts.choice?.fitting ?? [], times.times)[0]?.choice.bridge;
  if (!wanted || !answer?.ok || keyOf(wanted) === keyOf(answer.value)) return null;
  return (
    <div className="notice row">
      <p>{said.wantedOther(said.name(wanted.bays, wanted.nose))}</p>
      <Button
        className="no-print"
        onClick={() => design.setWish({ bays: String(wanted.bays), nose: String(wanted.nose) })}
      >
        {said.takeWanted}
      </Button>
    </div>
  );
}
