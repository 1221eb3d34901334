import { type FormEvent, useRef, useState } from 'react';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { SaidLine } from '../../../parts/SaidLine.tsx';
import { useSay } from '../../../parts/useSay.ts';
import { words } from '../../../words/words.ts';
import { DesignAnswer } from './DesignAnswer.tsx';
import { DesignFields } from './DesignFields.tsx';
import { DesignMore } from './DesignMore.tsx';
import { focusField } from './focusField.ts';
import { GroundSheet } from './GroundSheet.tsx';
import { LeftOpen } from './LeftOpen.tsx';
import { useDesign } from './useDesign.ts';

/** Measuring the ground and choosing a bridge: the design is made here as numbers are typed, and again by the server. */
export function GroundDesk() {
  const { state, api, linkKey } = useBuild();
  const { said, busy, say } = useSay();
  const [tried, setTried] = useState(false);
  const element = useRef<HTMLFormElement>(null);
  const design = useDesign({
    api,
    key: linkKey,
    name: state.name,
    zone: state.zone,
    ground: state.ground,
    kit: state.bridge?.kit.name ?? null,
    start: state.start,
  });
  const { faults, request } = design;
  const texts = words.ground;

  function choose(event: FormEvent): void {
    event.preventDefault();
    setTried(true);
    if (request) {
      void say('choose-bridge', request);
      return;
    }
    requestAnimationFrame(() => focusField(element.current?.querySelector('[aria-invalid]')));
  }

  return (
    <form ref={element} className="stack-wide ground-whole" onSubmit={choose} noValidate>
      <div className="ground-desk">
        <div className="ground-form no-print">
          <p className="second reading">{texts.lead}</p>
          <DesignFields design={design} strict={tried} />
        </div>
        <div className="ground-answer stack-wide">
          <DesignAnswer design={design} />
          <div className="stack ground-choose no-print">
            {state.work.tasks.length > 0 ? <p className="second">{texts.chooseMore}</p> : null}
            {/* A bridge that cannot be is not offered: what would free it stands above. */}
            {design.design?.ok === false ? null : (
              <p className="row">
                <Button type="submit" look="solid" disabled={busy}>
                  {texts.choose}
                </Button>
                <Button onClick={() => window.print()}>{words.launch.print}</Button>
              </p>
            )}
            {tried && faults.size > 0 ? (
              <>
                <p className="warn" role="alert">
                  {texts.checkFirst(faults.size)}
                </p>
                <LeftOpen design={design} />
              </>
            ) : null}
            <SaidLine said={said} />
          </div>
        </div>
      </div>
      {design.ground ? (
        <div className="print-only">
          <GroundSheet ground={design.ground} />
        </div>
      ) : null}
      <DesignMore design={design} />
    </form>
  );
}
