import { confidenceWords } from '#domain/brief/confidence.ts';
import { openingAt } from '#domain/brief/opening.ts';
import { useBuild } from '../../data/useBuild.ts';
import { atMinute, clock, count, iso, minutes, percent } from '../../words/units.ts';
import { words } from '../../words/words.ts';

const usual = [0.1, 0.5, 0.8, 0.9];

/** The spread in figures: by when with which confidence, the average, the chance to make the time asked for. */
export function Numbers() {
  const { state, forecast, now } = useBuild();
  const said = words.forecast.numbers;
  const frame = forecast?.forecast;
  if (!frame) return null;
  const { confidence, zone, start } = state;
  const time = (at: string | number): string => clock(at, zone, iso(now));
  const sure = [...new Set([...usual, confidence])].sort((one, other) => one - other);
  return (
    <section className="stack" aria-labelledby="forecast-numbers">
      <h2 id="forecast-numbers">{said.title}</h2>
      <dl className="numbers">
        {sure.map((one) => (
          <div key={one}>
            <dt>
              {said.by(confidenceWords(one))}
              {one === confidence ? <span className="second"> ({said.headline})</span> : null}
            </dt>
            <dd>{time(openingAt({ start }, frame, one))}</dd>
          </div>
        ))}
        <div>
          <dt>{said.middle}</dt>
          <dd>
            {time(atMinute(start, Math.ceil(frame.mean)))}, {said.give(minutes(frame.sd))}
          </dd>
        </div>
        {frame.chanceBy && state.askedFor ? (
          <div>
            <dt>{said.chance(time(state.askedFor))}</dt>
            <dd>{chanceSaid(frame.chanceBy.chance)}</dd>
          </div>
        ) : null}
      </dl>
      <p className="second small">
        {words.forecast.made(count(frame.runs), time(forecast?.at ?? now))}
      </p>
    </section>
  );
}

/** No run of some thousand is certainty. */
function chanceSaid(chance: number): string {
  const said = words.forecast.numbers;
  if (chance > 0.99) return said.sure;
  return chance < 0.01 ? said.hardly : percent(chance);
}
