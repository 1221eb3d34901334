import { rollCall } from '#domain/progress/rules/halt.ts';
import { useBuild } from '../../data/useBuild.ts';
import { SpanFigure } from '../../drawing/SpanFigure.tsx';
import { HaltNotice } from '../../parts/HaltNotice.tsx';
import { LineState } from '../../parts/LineState.tsx';
import { PageFrame } from '../../parts/PageFrame.tsx';
import { PageLink } from '../../parts/PageLink.tsx';
import { ThemeSwitch } from '../../parts/ThemeSwitch.tsx';
import { dateTimeGroup, iso, metres, zoneName } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { HoldPoints } from './HoldPoints.tsx';
import { HoldsUp } from './HoldsUp.tsx';
import { OpeningHead } from './OpeningHead.tsx';
import { WorkDone } from './WorkDone.tsx';
import './commander.css';

/** When it opens, how sure that is, and what holds it. Watches only. */
export default function CommanderPage() {
  const { state, now, linkKey, build, secret } = useBuild();
  const said = words.commander;
  const { bridge, halt, zone } = state;
  const called = rollCall(state, iso(now));
  return (
    <PageFrame
      className="commander"
      title={words.title(words.pages.commander, state.name)}
      header={
        <div className="page-line">
          <p>
            {said.line([
              state.name,
              ...(bridge ? [said.bridge(metres(bridge.length, 0), bridge.loadClass)] : []),
              words.allTimes(zoneName(now, zone)),
              dateTimeGroup(now, zone),
            ])}
          </p>
          <div className="row">
            <LineState />
            <ThemeSwitch linkKey={linkKey} />
          </div>
        </div>
      }
      footer={
        <p className="second small">
          {words.planningAid}
          {bridge?.kit.notForUse ? ` ${words.notForUse}` : ''}
        </p>
      }
    >
      <HaltNotice>
        <p>
          {said.halt(
            called.filter(({ answered }) => answered).length,
            called.length,
            Object.values(halt?.acknowledged ?? {}).reduce((sum, { people }) => sum + people, 0),
          )}
        </p>
      </HaltNotice>
      <OpeningHead
        more={
          <PageLink to={{ page: 'commander', build, secret, sub: 'forecast' }}>
            {words.forecast.more}
          </PageLink>
        }
      />
      <hr className="rule" />
      <SpanFigure state={state} />
      <hr className="rule" />
      <div className="commander-foot">
        <HoldsUp />
        <HoldPoints />
        <WorkDone />
      </div>
    </PageFrame>
  );
}
