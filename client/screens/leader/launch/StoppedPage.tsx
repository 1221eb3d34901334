import { useMemo, useState } from 'react';
import { heldNow } from '#domain/bridge/statics/heldNow.ts';
import { stageStatics } from '#domain/bridge/statics/stageStatics.ts';
import { useBuild } from '../../../data/useBuild.ts';
import type { Launching } from '../../../drawing/launchMoment.ts';
import { StoppedFigure } from '../../../drawing/StoppedFigure.tsx';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { PageLink } from '../../../parts/PageLink.tsx';
import { metres } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { numberIn } from '../../inspector/measures.ts';
import { useLeader } from '../useLeader.ts';
import { closesFarBank } from './closedZones.ts';
import { HoldsNow } from './HoldsNow.tsx';
import { PullBackList } from './PullBackList.tsx';
import { useLaunching } from './useLaunching.ts';
import { whereStopped } from './whereStopped.ts';
import './launch.css';

/** A launch that has stopped half-way: what holds it at that place, and the moves that bring it back. */
export function StoppedPage() {
  const launching = useLaunching();
  const { to } = useLeader();
  const said = words.launch;
  return (
    <div className="stack-wide">
      <h1>{said.stopped.title}</h1>
      {typeof launching === 'string' ? (
        <p className="notice">{launching}</p>
      ) : (
        <>
          <div className="row no-print">
            <PageLink to={to('launch')} className="button">
              {said.stopped.linkShort}
            </PageLink>
            <Button onClick={() => window.print()}>{said.print}</Button>
          </div>
          <Stopped launching={launching} />
        </>
      )}
    </div>
  );
}

function Stopped({ launching }: { readonly launching: Launching }) {
  const { state } = useBuild();
  const { bridge, kit, ground } = launching;
  const told = useMemo(() => whereStopped(state, bridge), [state, bridge]);
  const [stage, setStage] = useState(told?.stage ?? 1);
  const [typed, setTyped] = useState<string | null>(null);
  const said = words.launch.stopped;
  const fall = ground?.rollerFall ?? 0;
  const statics = useMemo(() => stageStatics(bridge, kit, fall), [bridge, kit, fall]);
  const shown = statics[stage - 1];
  if (!shown) return null;
  const most = shown.metres;
  const byTold = told?.stage === stage ? told.into : told && stage < told.stage ? most : 0;
  const into = typed === null ? byTold : numberIn(typed);
  const right = into !== null && into >= 0 && into <= most;
  const stopped = { stage, into: right ? into : 0 };
  const held = heldNow(bridge, kit, stopped, fall);
  return (
    <div className="stack-wide">
      <p className="lead reading">{said.lead}</p>
      {told === null ? <p className="notice">{said.notMoved}</p> : null}
      <div className="two-fields">
        <Field label={said.stage}>
          {(ties) => (
            <select
              {...ties}
              value={stage}
              onChange={(event) => {
                setStage(Number(event.target.value));
                setTyped(null);
              }}
            >
              {statics.map((one) => (
                <option key={one.stage} value={one.stage}>
                  {`${words.launch.stage(one.stage)}, ${metres(one.metres)}`}
                </option>
              ))}
            </select>
          )}
        </Field>
        <Field
          label={said.into}
          hint={said.intoHint(metres(most))}
          fault={right ? undefined : said.intoFault(metres(most))}
        >
          {(ties) => (
            <input
              {...ties}
              inputMode="decimal"
              autoComplete="off"
              value={typed ?? String(byTold)}
              onChange={(event) => setTyped(event.target.value)}
            />
          )}
        </Field>
      </div>
      {held && right ? (
        <>
          <HoldsNow held={held} />
          <StoppedFigure
            launching={launching}
            stage={shown}
            closesLanding={closesFarBank(state.work, stage)}
            into={stopped.into}
            label={`${said.title}. ${words.launch.stage(stage)}.`}
          />
          <p className="second reading">{said.builtSince}</p>
          <PullBackList launching={launching} stopped={stopped} />
        </>
      ) : null}
    </div>
  );
}
