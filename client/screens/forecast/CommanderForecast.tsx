import { useBuild } from '../../data/useBuild.ts';
import { HaltNotice } from '../../parts/HaltNotice.tsx';
import { LineState } from '../../parts/LineState.tsx';
import { PageFrame } from '../../parts/PageFrame.tsx';
import { PageLink } from '../../parts/PageLink.tsx';
import { ThemeSwitch } from '../../parts/ThemeSwitch.tsx';
import { dateTimeGroup, zoneName } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { ForecastParts } from './ForecastParts.tsx';

/** The forecast for a commander: all of it but the pace of the crews and what the leader tries. */
export default function CommanderForecast() {
  const { state, now, linkKey, build, secret } = useBuild();
  return (
    <PageFrame
      className="commander"
      title={words.title(words.forecast.title, state.name)}
      header={
        <div className="page-line">
          <p>
            {words.commander.line([
              state.name,
              words.forecast.title,
              words.allTimes(zoneName(now, state.zone)),
              dateTimeGroup(now, state.zone),
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
          {state.bridge?.kit.notForUse ? ` ${words.notForUse}` : ''}
        </p>
      }
    >
      <HaltNotice />
      <p className="no-print">
        <PageLink to={{ page: 'commander', build, secret }}>{words.forecast.back}</PageLink>
      </p>
      <ForecastParts leader={false} />
    </PageFrame>
  );
}
