import { useBuild } from '../../data/useBuild.ts';
import { Button } from '../../parts/Button.tsx';
import { metres, minutes, tonnes } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { useKits } from '../leader/ground/useKits.ts';
import { CarryingTable } from './CarryingTable.tsx';
import { NearMoving } from './NearMoving.tsx';
import { PackingList } from './PackingList.tsx';
import { StacksFigure } from './StacksFigure.tsx';
import { TailgateCount } from './TailgateCount.tsx';
import { TruckTable } from './TruckTable.tsx';
import { useStores } from './useStores.ts';
import './stores.css';

/** All of the stores: trucks and when they are wanted, the count at the tailgate, stacks, carrying and packing. */
export function StoresParts() {
  const { state, api, linkKey } = useBuild();
  const stores = useStores();
  const { kit: whole } = useKits(api, linkKey, state.bridge?.kit.name ?? null);
  const said = words.stores;
  if (!stores) {
    return (
      <>
        <h1>{said.title}</h1>
        <p className="notice">{said.loading}</p>
      </>
    );
  }
  const { kit, loads } = stores;
  const toCome = loads.filter(({ here }) => !here).length;
  return (
    <div className="stack-wide stores">
      <h1>{kit ? said.all(tonnes(kit.kilograms), loads.length) : said.title}</h1>
      <p className="lead">{loads.length === 0 ? said.noLoads : said.toCome(toCome)}</p>
      <p className="no-print">
        <Button onClick={() => window.print()}>{said.print}</Button>
      </p>
      {loads.length > 0 ? <TruckTable stores={stores} /> : null}
      {kit && whole ? <TailgateCount loads={loads} kit={whole} /> : null}
      {kit ? (
        <>
          <section className="stack" aria-labelledby="stores-stacks">
            <h2 id="stores-stacks">{said.stacks}</h2>
            <StacksFigure kit={kit} />
            <p>
              {said.stacksMore(metres(kit.walk))}{' '}
              {kit.deck
                ? said.circuit(metres(kit.deck.metres, 0), minutes(kit.deck.round), kit.deck.teams)
                : ''}
            </p>
          </section>
          <h2>{said.carrying}</h2>
          <CarryingTable kit={kit} />
          <PackingList kit={kit} />
        </>
      ) : (
        <p className="notice">{said.noKit}</p>
      )}
      <NearMoving />
    </div>
  );
}
