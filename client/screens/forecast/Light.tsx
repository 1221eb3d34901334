import { lightSentence, moonSentence } from '#domain/brief/light.ts';
import { openingAt } from '#domain/brief/opening.ts';
import { useBuild } from '../../data/useBuild.ts';
import { LightStrip } from '../../drawing/LightStrip.tsx';
import { lightCourse } from '../../drawing/lightPhases.ts';
import { iso } from '../../words/units.ts';
import { words } from '../../words/words.ts';

const hour = 3_600_000;

/** Sun, twilight and moon of this day and night at the site, drawn small, and in words. */
export function Light() {
  const { state, forecast, now } = useBuild();
  const said = words.forecast.light;
  const { ground, zone, start, confidence } = state;
  const place = ground?.place;
  const frame = forecast?.forecast;
  // Beginning with the build, or an hour ago where it has lasted long: 24 hours from there.
  const from = Math.max(Date.parse(start), now - 12 * hour) - hour;
  const course = place ? lightCourse(place, from, from + 24 * hour) : null;
  const alike = course && course.turns.length === 0 ? course.spells[0]?.phase : null;
  return (
    <section className="stack" aria-labelledby="forecast-light">
      <h2 id="forecast-light">{said.title}</h2>
      {place && course ? (
        <>
          <p>
            {alike === 'day' ? said.polarDay : lightSentence(place, iso(now), zone)}{' '}
            {moonSentence(iso(now))}
          </p>
          <LightStrip
            course={course}
            zone={zone}
            now={now}
            opens={frame ? Date.parse(openingAt({ start }, frame, confidence)) : null}
          />
          <p className="second small">{said.names}</p>
        </>
      ) : (
        <p>{said.none}</p>
      )}
    </section>
  );
}
