import { taskLabel } from '#domain/progress/words.ts';
import type { StoresLoad, StoresReply } from '#shared/wireStores.ts';
import { useBuild } from '../../data/useBuild.ts';
import { atMinute, clock, iso, minutes } from '../../words/units.ts';
import { words } from '../../words/words.ts';

/** Each truck: when it comes, when it is wanted, how late it may be, and what it does to the opening when it is later. */
export function TruckTable({ stores }: { readonly stores: StoresReply }) {
  const said = words.stores;
  return (
    <section className="stack" aria-labelledby="stores-trucks">
      <h2 id="stores-trucks">{said.trucks}</h2>
      <ul className="truck-list">
        {stores.loads.map((load) => (
          <Truck key={load.load} load={load} />
        ))}
      </ul>
      {stores.draws > 0 ? <p className="second small">{said.drawn(stores.draws)}</p> : null}
    </section>
  );
}

function Truck({ load }: { readonly load: StoresLoad }) {
  const { state, now } = useBuild();
  const said = words.stores;
  const at = (minute: number): string => clock(atMinute(state.start, minute), state.zone, iso(now));
  const { wanted, latestDrawn, needed, latest, planned, expected, here, firstTask } = load;
  const behind = expected - planned;
  const facts: readonly (readonly [string, string])[] = here
    ? []
    : [
        [
          said.wanted,
          [
            wanted ? said.between(at(wanted.p10), at(wanted.p50), at(wanted.p90)) : '',
            needed === null ? '' : said.byPlan(at(needed)),
            firstTask === null ? said.nothing : said.wantedFor(taskLabel(state, firstTask)),
          ]
            .filter(Boolean)
            .join(', '),
        ],
        [
          said.latest,
          [
            latestDrawn
              ? said.between(at(latestDrawn.p10), at(latestDrawn.p50), at(latestDrawn.p90))
              : '',
            latest === null ? '' : said.byPlan(at(latest)),
          ]
            .filter(Boolean)
            .join(', '),
        ],
        [
          said.ifLate,
          load.ifLate
            .map(({ by, opens, laterOnAverage }) =>
              said.lateOpens(
                minutes(by),
                at(opens),
                Math.round(laterOnAverage ?? 0) > 0
                  ? said.onAverage(minutes(laterOnAverage ?? 0))
                  : said.noLater,
              ),
            )
            .join('; '),
        ],
      ];
  return (
    <li className="stack-tight">
      <h3>
        {load.name}
        {': '}
        {here ? (
          said.here(at(expected))
        ) : behind > 0.5 ? (
          <span className="warn">{said.late(at(expected), minutes(behind))}</span>
        ) : (
          at(expected)
        )}
      </h3>
      <dl className="truck-facts">
        {facts
          .filter(([, value]) => value !== '')
          .map(([name, value]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ))}
      </dl>
    </li>
  );
}
