import { useState } from 'react';
import { confidenceWords } from '#domain/brief/confidence.ts';
import { openedOf } from '#domain/progress/views/opened.ts';
import type { ForecastHistory } from '#shared/wireForecast.ts';
import { useBuild } from '../../data/useBuild.ts';
import { OpeningCourse } from '../../drawing/OpeningCourse.tsx';
import { type Look, lookAt } from '../../drawing/openingCourse.ts';
import { FetchState } from '../../parts/FetchState.tsx';
import { atMinute, clock, iso, minuteOf, zoneName } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { foldQuiet, markedMoves, moveSaid } from './moveWords.ts';
import { useHistory } from './useForecast.ts';

/** How the forecast itself moved since the start, with what moved it marked in the drawing and named beside it. */
export function Course() {
  const history = useHistory();
  return (
    <section className="stack forecast-course" aria-labelledby="forecast-course">
      <h2 id="forecast-course">{words.forecast.course.title}</h2>
      <FetchState fetched={history} />
      {history.value ? <Drawn history={history.value} /> : null}
    </section>
  );
}

/** Marks in the drawing: as many as are read. */
const mostMarked = 8;

function Drawn({ history: { points, moves: told } }: { readonly history: ForecastHistory }) {
  const { state, now } = useBuild();
  const [chosen, setChosen] = useState<number | null>(null);
  const said = words.forecast.course;
  const { start, zone, confidence } = state;
  if (points.length === 0) return <p className="notice">{said.none}</p>;
  const looks = points.map(
    ({ at, p10, p50, p90, promised }): Look => ({
      at: minuteOf(start, at),
      early: p10,
      even: p50,
      late: p90,
      sure: promised,
    }),
  );
  const all = foldQuiet(told);
  const moves = markedMoves(all, mostMarked);
  const time = (at: string | number): string => clock(at, zone, iso(now));
  const opening = (minute: number): string => time(atMinute(start, Math.ceil(minute)));
  const turns = moves.map((move) => ({ at: minuteOf(start, move.at), says: moveSaid(move) }));
  const until = openedOf(state).since ?? now;
  const sure = confidenceWords(confidence);
  return (
    <div className="course-board">
      <div className="stack">
        <OpeningCourse
          looks={looks}
          turns={turns}
          asked={state.askedFor === null ? null : minuteOf(start, state.askedFor)}
          now={minuteOf(start, until)}
          start={start}
          zone={zone}
          chosen={chosen}
          onChoose={(turn) => setChosen(turn === chosen ? null : turn)}
        />
        <p className="second small">
          {said.more(zoneName(now, zone))} {said.lines(sure)}{' '}
          {confidence === 0.9 ? said.sureIsLate : ''}
        </p>
      </div>
      <div className="stack">
        <h3>{said.events}</h3>
        {points.length === 1 ? <p>{said.one}</p> : null}
        {points.length > 1 && all.length === 0 ? <p>{said.noEvents}</p> : null}
        {moves.length > 0 ? <p className="second small no-print">{said.touch}</p> : null}
        <ol className="course-events">
          {moves.map((move, index) => {
            const since = lookAt(looks, minuteOf(start, move.at))?.sure;
            return (
              <li
                key={`${move.number} ${move.at}`}
                className={index === chosen ? 'chosen' : ''}
                ref={index === chosen ? intoSight : null}
              >
                <b>{index + 1}</b>
                <div>
                  <p>
                    <time dateTime={move.at}>{time(move.at)}</time> {moveSaid(move)}
                  </p>
                  {since === undefined ? null : (
                    <p className="second small">
                      {said.said(sure, opening(since - move.minutes), opening(since))}
                    </p>
                  )}
                </div>
              </li>
            );
          })}
        </ol>
        {all.length > moves.length ? (
          <p className="second small">{said.smaller(all.length - moves.length)}</p>
        ) : null}
        <details className="quiet small no-print">
          <summary>{said.inWords}</summary>
          <ul className="stack-tight">
            {points.map(({ number, at, promised, p10, p50, p90 }) => (
              <li key={`${number} ${at}`}>
                {said.at(
                  time(at),
                  `${sure.toLowerCase()} ${opening(promised)}`,
                  opening(p50),
                  opening(p10),
                  opening(p90),
                )}
              </li>
            ))}
          </ul>
        </details>
      </div>
    </div>
  );
}

/** A turn that was touched in the drawing is read where it is named. */
function intoSight(item: HTMLLIElement | null): void {
  item?.scrollIntoView({ block: 'nearest' });
}
