import { exposure } from '#domain/bridge/safety/exposure.ts';
import { waterRescue } from '#domain/bridge/safety/ringBuoys.ts';
import { zoneLabel } from '#domain/progress/words.ts';
import { useBuild } from '../../data/useBuild.ts';
import { metres, minutes } from '../../words/units.ts';
import { words } from '../../words/words.ts';

/** Time that people spend in each zone and near what moves, by the plan; and what stands by for rescue over water. */
export function NearMoving() {
  const { state } = useBuild();
  const { work, plan, ground } = state;
  const said = words.stores;
  const rescue = ground && ground.water.depth !== 0 ? waterRescue(ground.gap) : null;
  const zones = plan ? exposure(work, plan).filter(({ personMinutes }) => personMinutes > 0) : [];
  return (
    <>
      {zones.length > 0 ? (
        <section className="stack" aria-labelledby="stores-near">
          <h2 id="stores-near">{said.near}</h2>
          <p className="second">{said.nearMore}</p>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
          <section className="wide-table" tabIndex={0} aria-label={said.zone}>
            <table>
              <thead>
                <tr>
                  {[said.zone, said.inAll, said.moving, said.most].map((name) => (
                    <th key={name} scope="col">
                      {name}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {zones.map(({ zone, personMinutes, moving, mostPeople }) => (
                  <tr key={zone}>
                    <th scope="row">{zoneLabel(state, zone)}</th>
                    <td>{minutes(personMinutes)}</td>
                    <td>{moving > 0 ? <strong>{minutes(moving)}</strong> : ''}</td>
                    <td>{mostPeople}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
        </section>
      ) : null}
      {rescue ? (
        <section className="stack" aria-labelledby="stores-rescue">
          <h2 id="stores-rescue">{said.rescue}</h2>
          <p>{said.rescueOf(rescue.buoys, metres(rescue.apart, 0), metres(rescue.line, 1))}</p>
        </section>
      ) : null}
    </>
  );
}
