import { openedOf } from '#domain/progress/views/opened.ts';
import { useBuild } from '../../data/useBuild.ts';
import { FetchState } from '../../parts/FetchState.tsx';
import { OpeningHead } from '../commander/OpeningHead.tsx';
import { Chain } from './Chain.tsx';
import { Course } from './Course.tsx';
import { DoubtSection } from './DoubtSection.tsx';
import { LeversSection } from './LeversSection.tsx';
import { Light } from './Light.tsx';
import { Milestones } from './Milestones.tsx';
import { Moved } from './Moved.tsx';
import { Numbers } from './Numbers.tsx';
import { Pace } from './Pace.tsx';
import { useFull } from './useForecast.ts';
import '../commander/commander.css';
import './forecast.css';

/** The forecast from its headline down to what it rests on. What only a leader needs or may see is left out for others. */
export function ForecastParts({ leader }: { readonly leader: boolean }) {
  const { state } = useBuild();
  const full = useFull();
  // Before a plan there is nothing to compare: only what the forecast will rest on.
  const planned = state.plan !== null;
  return (
    <div className="forecast">
      <OpeningHead />
      <FetchState fetched={full} />
      {planned ? (
        <>
          <hr className="rule" />
          <div className="forecast-board">
            <Moved />
            <Numbers />
          </div>
          <hr className="rule" />
          <Course />
        </>
      ) : null}
      {full.value?.frame?.forecast ? (
        <>
          <hr className="rule" />
          <div className="forecast-board">
            <Milestones />
            <Chain />
          </div>
        </>
      ) : null}
      {leader && planned ? (
        <>
          <hr className="rule" />
          <div className="forecast-board">
            {openedOf(state).open ? null : <LeversSection />}
            <Pace />
          </div>
        </>
      ) : null}
      <hr className="rule" />
      <div className="forecast-board is-uneven">
        <DoubtSection />
        <Light />
      </div>
    </div>
  );
}
