import type { Bridge } from '#domain/bridge/bridge.ts';
import { people, tonnes } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';

/** What the bridge is made of. */
export function PartsTable({ parts }: { readonly parts: Bridge['parts'] }) {
  const said = words.ground;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section className="wide-table" tabIndex={0} aria-label={said.parts}>
      <table>
        <thead>
          <tr>
            <th scope="col">{said.part}</th>
            <th scope="col">{said.count}</th>
            <th scope="col">{said.each}</th>
            <th scope="col">{said.carriers}</th>
          </tr>
        </thead>
        <tbody>
          {parts.map(({ part, count, kilograms, carriers }) => (
            <tr key={part}>
              <th scope="row">{part}</th>
              <td>{count}</td>
              <td>{kilograms < 1000 ? `${kilograms} kg` : tonnes(kilograms)}</td>
              <td>{carriers === 0 ? said.machine : people(carriers)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
