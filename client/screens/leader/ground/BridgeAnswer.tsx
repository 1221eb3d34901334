import type { Bridge } from '#domain/bridge/bridge.ts';
import { vehiclesOf } from '../../../words/loadClass.ts';
import { metres, tonnes } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { PartsTable } from './PartsTable.tsx';

type Props = {
  readonly bridge: Bridge;
  /** Load class asked for, and metres of room; null when it was not measured. */
  readonly wanted: number;
  readonly roomBehind: number | null;
};

/** The bridge that answers the ground, in sentences first, then its parts. */
export function BridgeAnswer({ bridge, wanted, roomBehind }: Props) {
  const said = words.ground;
  const { kit, length, bays, nose, noseLength, bearing, roomNeeded, loadClass } = bridge;
  const needed = metres(roomNeeded);
  const total = bridge.parts.reduce((sum, { count, kilograms }) => sum + count * kilograms, 0);
  return (
    <div className="stack-wide">
      <section className="stack">
        <h2 className="bridge-answer">{said.answer(kit.title, metres(length), bays)}</h2>
        <p>
          {said.nose(nose, metres(noseLength))}{' '}
          {said.bearing(metres(bearing.near), metres(bearing.far))}
        </p>
        <p>
          <strong>{said.loadClass(loadClass, wanted)}</strong> {words.commander.loadClass.rule}{' '}
          <span className="second">{words.commander.loadClass.asGuide(vehiclesOf(loadClass))}</span>
        </p>
        <p>
          {roomBehind === null ? said.roomUnknown(needed) : said.room(needed, metres(roomBehind))}
        </p>
      </section>
      <details className="quiet">
        <summary>
          {said.parts}, {said.total(tonnes(total))}
        </summary>
        <PartsTable parts={bridge.parts} />
      </details>
    </div>
  );
}
