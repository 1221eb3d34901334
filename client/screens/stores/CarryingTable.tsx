import type { StoresOfKit } from '#shared/wireStores.ts';
import { minutes } from '../../words/units.ts';
import { words } from '../../words/words.ts';

/** Parts carried by hand: by how many, how long, and where that is more than people should lift. */
export function CarryingTable({ kit }: { readonly kit: StoresOfKit }) {
  const said = words.stores;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section className="wide-table carrying" tabIndex={0} aria-label={said.carrying}>
      <table>
        <thead>
          <tr>
            {[said.part, said.count, said.carriers, said.each, said.allOf, said.warning].map(
              (name) => (
                <th key={name} scope="col">
                  {name}
                </th>
              ),
            )}
          </tr>
        </thead>
        <tbody>
          {kit.carrying.map((one) => (
            <tr key={one.part}>
              <th scope="row">{one.part}</th>
              <td>{one.count}</td>
              <td>{said.carriersOf(one.carriers, `${Math.round(one.share)} kg`)}</td>
              <td>{one.minutes === null ? '' : `${one.minutes.toFixed(1)} min`}</td>
              <td>{one.teamMinutes === null ? '' : minutes(one.teamMinutes)}</td>
              <td className="second small">{one.warnings.join(' ')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
