import type { Choices } from '#domain/bridge/choices.ts';
import { numbersShort } from '../../../words/lists.ts';
import { words } from '../../../words/words.ts';

/** Lengths and noses that cannot be, those with the same reason in one line. */
export function RuledOutList({ ruledOut }: { readonly ruledOut: Choices['ruledOut'] }) {
  const said = words.choice;
  if (ruledOut.length === 0) return null;
  const groups = new Map<string, Choices['ruledOut']>();
  for (const one of ruledOut) {
    const key = `${one.nose === null ? '' : one.bays}|${one.limits.join(' ')}`;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return (
    <section className="stack">
      <h3>{said.ruledOut}</h3>
      <ul className="stack ruled-out">
        {[...groups].map(([key, group]) => {
          const bays = numbersShort([...new Set(group.map((one) => one.bays))]);
          const noses = group.flatMap(({ nose }) => (nose === null ? [] : [nose]));
          const nose = noses.length > 0 ? said.ruledNose(numbersShort(noses)) : '';
          return (
            <li key={key}>
              <strong>{said.ruledName(bays, nose)}</strong>: {group[0]?.limits.join(' ')}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
