import { words } from '../../words/words.ts';

/** What can hurt, before the tick. Always with who decides. */
export function Cautions({
  cautions,
  begun,
}: {
  readonly cautions: readonly string[];
  readonly begun: boolean;
}) {
  if (cautions.length === 0) return null;
  const said = words.chief.card;
  return (
    <section className="cautions">
      <h3>{begun ? said.during : said.before}</h3>
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      <p className="second small">{said.decides}</p>
    </section>
  );
}
