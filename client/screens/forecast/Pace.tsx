import { paceBase } from '#domain/forecast/learn/paceWords.ts';
import type { PaceReply } from '#shared/wireForecast.ts';
import { useBuild } from '../../data/useBuild.ts';
import { useFetched } from '../../data/useFetched.ts';
import { FetchState } from '../../parts/FetchState.tsx';
import { words } from '../../words/words.ts';

/** How fast each crew is, in plain words; for the leader alone. */
export function Pace() {
  const { forecast } = useBuild();
  const pace = useFetched<PaceReply>('pace', forecast?.at);
  const said = words.forecast.pace;
  return (
    <section className="stack" aria-labelledby="forecast-pace">
      <h2 id="forecast-pace">{said.title}</h2>
      <p className="second small">{said.more}</p>
      <FetchState fetched={pace} />
      {pace.value?.crews.length === 0 ? <p>{said.none}</p> : null}
      <ul className="shares">
        {pace.value?.crews.map(({ crew, name, words: plain, factor, from, to, tasks }) => (
          <li key={crew}>
            <strong>{said.line(name, plain)}</strong>{' '}
            <span className="second">
              {tasks === 0 ? said.few : `${said.tasks(tasks)}. `}
              {tasks === 0 ? '' : said.sure(...range(factor, from, to))}
            </span>
          </li>
        ))}
      </ul>
      {pace.value && pace.value.inOneGo > 0 ? <p>{said.oneGo(pace.value.inOneGo)}</p> : null}
    </section>
  );
}

/** Both ends of a pace for as many planned minutes as its middle is told for, to half a minute. */
function range(factor: number, from: number, to: number): [string, string, number] {
  const base = paceBase(factor);
  const halves = (value: number): string => String(Math.round(value * base * 2) / 2);
  return [halves(from), halves(to), base];
}
