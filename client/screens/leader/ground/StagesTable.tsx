import type { Bridge, Stage } from '#domain/bridge/bridge.ts';
import { metres } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';

/** The launch stage by stage: what is built before each move, how far it goes, and where the balance lies after it. */
export function StagesTable({ bridge }: { readonly bridge: Bridge }) {
  const said = words.ground;
  return (
    <section className="stack">
      <h3>{said.stages}</h3>
      {/* A table may be wider than a phone: it scrolls by itself, by keyboard too. */}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
      <section className="wide-table" tabIndex={0} aria-label={said.stages}>
        <table>
          <thead>
            <tr>
              <th scope="col">{said.stage}</th>
              <th scope="col">{said.stageBays}</th>
              <th scope="col">{said.stageDecked}</th>
              <th scope="col">{said.stageMetres}</th>
              <th scope="col">{said.stageTip}</th>
              <th scope="col">{said.stageBalance}</th>
            </tr>
          </thead>
          <tbody>
            {bridge.stages.map((stage) => (
              <tr key={stage.stage}>
                <th scope="row">{stage.stage}</th>
                <td>{stage.bays}</td>
                <td>{baysShort(stage.decked) || said.stageNone}</td>
                <td>
                  {metres(stage.metres)}
                  {stage.lands ? `, ${said.stageLands}` : ''}
                </td>
                <td>{metres(stage.tip)}</td>
                <td>{balanceOf(stage)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p className="second small">{said.balanceMore}</p>
    </section>
  );
}

function balanceOf({ balance }: Stage): string {
  const said = words.ground;
  if (balance === null) return said.landed;
  return balance < 0 ? said.ahead(metres(-balance)) : said.behind(metres(balance));
}

/** "8 to 11", "3, 5". */
function baysShort(bays: readonly number[]): string {
  const sorted = [...bays].sort((a, b) => a - b);
  const [first] = sorted;
  const last = sorted.at(-1);
  if (first === undefined || last === undefined) return '';
  const together = last - first === sorted.length - 1;
  return together && sorted.length > 1
    ? words.ground.range(String(first), String(last))
    : sorted.join(', ');
}
