import { useBuild } from '../../data/useBuild.ts';
import { MilestoneLines } from '../../drawing/MilestoneLines.tsx';
import { atMinute, clock, iso, minuteOf, minutes } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { useFull } from './useForecast.ts';

/** When the holds, the landing and the seating are done, each with its spread. */
export function Milestones() {
  const { state, now } = useBuild();
  const { value } = useFull();
  const said = words.forecast.milestones;
  if (!value?.frame?.forecast) return null;
  const { start, zone } = state;
  const time = (minute: number): string =>
    clock(atMinute(start, Math.ceil(minute)), zone, iso(now));
  const done = value.milestones.filter((one) => one.done);
  const last = done.toSorted((one, other) => one.p50 - other.p50).at(-1);
  const holds = new Set(state.work.tasks.flatMap(({ id, hold }) => (hold ? [id] : [])));
  const ahead = value.milestones.filter((one) => !one.done);
  return (
    <section className="stack" aria-labelledby="forecast-milestones">
      <h2 id="forecast-milestones">{said.title}</h2>
      {value.milestones.length === 0 ? <p>{said.none}</p> : null}
      {last ? <p>{said.done(done.length, `${last.name} ${time(last.p50)}`)}</p> : null}
      {ahead.length === 0 && last ? <p>{said.allDone}</p> : null}
      {ahead.length > 0 ? (
        <>
          <MilestoneLines
            milestones={ahead.map((one) => ({
              ...one,
              label: said.label(one.name, time(one.p50), time(one.p90)),
              hold: holds.has(one.task),
            }))}
            now={minuteOf(start, now)}
            start={start}
            zone={zone}
          />
          <p className="second small">{said.more}</p>
          <details className="quiet small no-print">
            <summary>{said.inWords}</summary>
            <ul className="stack-tight">
              {ahead.map(({ task, name, p10, p50, p80, p90, planned }) => (
                <li key={task}>
                  {said.line(name, time(p10), time(p50), time(p80), time(p90))}{' '}
                  {planned !== null && Math.abs(p50 - planned) >= 1
                    ? said.againstPlan(minutes(Math.abs(p50 - planned)), p50 > planned)
                    : ''}
                </li>
              ))}
            </ul>
          </details>
        </>
      ) : null}
    </section>
  );
}
