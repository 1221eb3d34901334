import type { OnChainShown } from '#shared/wireForecast.ts';
import { useBuild } from '../../data/useBuild.ts';
import { words } from '../../words/words.ts';
import { useFull } from './useForecast.ts';

const shownTasks = 8;

/** How often each crew, and each of the next tasks, sets the opening. */
export function Chain() {
  const { state } = useBuild();
  const { value } = useFull();
  const said = words.forecast.chain;
  if (!value?.frame?.forecast) return null;
  const crews = value.crewsOnChain.filter(({ share }) => share > 0);
  const starts = new Map(state.plan?.tasks.map(({ task, start }) => [task, start]));
  const tasks = value.tasksOnChain
    .filter(({ id, share }) => share >= 0.25 && state.tasks[id]?.status !== 'done')
    .toSorted((one, other) => (starts.get(one.id) ?? 0) - (starts.get(other.id) ?? 0))
    .slice(0, shownTasks);
  return (
    <section className="stack" aria-labelledby="forecast-chain">
      <h2 id="forecast-chain">{said.title}</h2>
      <p className="second small">{said.more}</p>
      {crews.length === 0 ? <p>{said.none}</p> : null}
      <div className="two-fields">
        <Shares title={said.crews} some={crews} />
        <Shares title={said.tasks} some={tasks} />
      </div>
    </section>
  );
}

type SharesProps = { readonly title: string; readonly some: readonly OnChainShown[] };

function Shares({ title, some }: SharesProps) {
  const said = words.forecast.chain;
  if (some.length === 0) return null;
  const twentieths = ({ share }: OnChainShown): number => Math.round(20 * share);
  const always = some.filter((one) => twentieths(one) === 20);
  return (
    <div className="stack-tight">
      <h3>{title}</h3>
      {always.length > 0 ? (
        <p>
          <b>{said.share('20')}:</b> {always.map(({ name }) => name).join('; ')}.
        </p>
      ) : null}
      <ul className="shares">
        {some
          .filter((one) => !always.includes(one))
          .map((one) => (
            <li key={one.id}>
              <span>
                {one.name}{' '}
                <b>{said.share(twentieths(one) === 0 ? said.under : String(twentieths(one)))}</b>
              </span>
              <svg
                className="share-bar"
                viewBox="0 0 100 4"
                preserveAspectRatio="none"
                aria-hidden="true"
              >
                <rect className="bar-whole" x="0" y="0" width="100" height="4" />
                <rect className="bar-done" x="0" y="0" width={100 * one.share} height="4" />
              </svg>
            </li>
          ))}
      </ul>
    </div>
  );
}
