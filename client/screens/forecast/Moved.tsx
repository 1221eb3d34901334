import type { ForecastMove } from '#shared/wireForecast.ts';
import { useBuild } from '../../data/useBuild.ts';
import { clock, iso } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { shiftSaid } from './moveWords.ts';
import { useFull } from './useForecast.ts';

/** What moved the opening, by how much and why: since the first forecast, and last. */
export function Moved() {
  const { state, now } = useBuild();
  const { value } = useFull();
  const said = words.forecast.moved;
  if (!value) return null;
  const { start, last } = value.moved;
  if (!start && !last && !value.frame?.forecast) return null;
  const time = (at: string): string => clock(at, state.zone, iso(now));
  const alike = start && last && start.since.number === last.since.number;
  return (
    <section className="stack-wide" aria-labelledby="forecast-moved">
      <h2 id="forecast-moved">{said.title}</h2>
      {start ? <Move title={said.start(time(start.since.at))} move={start} /> : null}
      {last && !alike ? (
        <Move title={said.last(time(last.since.at), time(last.at))} move={last} />
      ) : null}
      {start || last ? null : <p>{said.none}</p>}
    </section>
  );
}

function Move({ title, move }: { readonly title: string; readonly move: ForecastMove }) {
  return (
    <div className="stack-tight">
      <h3>
        {title}: {shiftSaid(move.minutes)}
      </h3>
      <ul className="listed">
        {move.causes.map(({ sentence }) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {move.causes.length === 0 && Math.round(move.minutes) !== 0 ? (
        <p>{words.forecast.course.small}</p>
      ) : null}
    </div>
  );
}
