import type { StageStatics } from '#domain/bridge/statics/stageStatics.ts';
import { numbersShort } from '../../../words/lists.ts';
import { words } from '../../../words/words.ts';

/** All stages in one table, for the wall of the command post. */
export function LaunchTable({ stages }: { readonly stages: readonly StageStatics[] }) {
  const said = words.launch;
  return (
    <section className="stack launch-table">
      <h3>{said.table}</h3>
      {/* A table may be wider than a phone: it scrolls by itself, by keyboard too. */}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
      <section className="wide-table" tabIndex={0} aria-label={said.table}>
        <table>
          <thead>
            <tr>
              {Object.values(said.head).map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {stages.map((stage) => (
              <tr key={stage.stage}>
                <th scope="row">{stage.stage}</th>
                <td>{stage.bays}</td>
                <td>{numbersShort(stage.decked) || words.ground.stageNone}</td>
                <td>{stage.nose}</td>
                <td>
                  {stage.metres.toFixed(1)}
                  {stage.lands ? `, ${words.ground.stageLands}` : ''}
                </td>
                <td>{stage.moved.toFixed(1)}</td>
                <td>{stage.centreOfGravity.toFixed(1)}</td>
                <td>{stage.margin.toFixed(1)}</td>
                <td>
                  {stage.reactions
                    .map(({ of, newtons }) => `${said.short[of]} ${(newtons / 1000).toFixed(0)}`)
                    .join(', ')}
                </td>
                <td>{stage.tipSag === null ? '' : stage.tipSag.toFixed(2)}</td>
                <td>
                  {stage.push === null
                    ? ''
                    : ((stage.push.newtons - stage.push.holdBack) / 1000).toFixed(1)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p className="second small">{said.tableMore}</p>
    </section>
  );
}
