import type { StoresOfKit } from '#shared/wireStores.ts';
import { percent, tonnes } from '../../words/units.ts';
import { words } from '../../words/words.ts';

/** Trucks as they would be packed by mass and bed, and the pallets on them. */
export function PackingList({ kit }: { readonly kit: StoresOfKit }) {
  const { packing, truck } = kit;
  const said = words.stores;
  if (!packing || !truck) return null;
  return (
    <section className="stack" aria-labelledby="stores-packing">
      <h2 id="stores-packing">{said.packing}</h2>
      <ol className="truck-list">
        {packing.trucks.map((one, row) => (
          <li key={said.packedTruck(row + 1)}>
            <strong>{said.packedTruck(row + 1)}</strong>
            {': '}
            {said.packedOf(
              tonnes(one.loaded),
              percent(one.loaded / truck.mass),
              percent(one.bed / truck.bed),
            )}
            <span className="second">
              {'. '}
              {[...one.pallets, ...one.parts.map(({ part, count }) => `${count} ${part}`)].join(
                ', ',
              )}
            </span>
          </li>
        ))}
      </ol>
      {packing.pallets.length > 0 ? (
        <details>
          <summary>{said.pallets}</summary>
          <ul className="listed">
            {packing.pallets.map(({ name, parts, loaded }) => (
              <li key={name}>
                {name}, {tonnes(loaded)}:{' '}
                {parts.map(({ part, count }) => `${count} ${part}`).join(', ')}
              </li>
            ))}
          </ul>
        </details>
      ) : null}
      {packing.tooBig.length > 0 ? (
        <p className="warn">{said.tooBig(packing.tooBig.join(', '))}</p>
      ) : null}
    </section>
  );
}
