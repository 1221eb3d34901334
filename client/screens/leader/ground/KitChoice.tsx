import type { KitListed } from '#shared/wireBuilds.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { words } from '../../../words/words.ts';
import type { TypedWish } from './wish.ts';

type Props = {
  readonly kits: readonly KitListed[] | null;
  readonly chosen: string;
  readonly onChoose: (name: string) => void;
  readonly unreachable: boolean;
  readonly again: () => void;
  readonly wish: TypedWish;
  readonly wishFault: keyof TypedWish | null;
  readonly onWish: (wish: TypedWish) => void;
};

/** Which kit, and what the leader wants other than its rules choose. */
export function KitChoice(props: Props) {
  const { kits, chosen, onChoose, unreachable, again, wish, wishFault, onWish } = props;
  const said = words.ground;
  if (unreachable) {
    return (
      <div className="notice row" role="status">
        <p>{words.said.unreachable}</p>
        <Button onClick={again}>{words.start.again}</Button>
      </div>
    );
  }
  if (kits === null) return <p aria-busy="true">{said.kitsLoading}</p>;
  if (kits.length === 0) return <p className="notice warn">{said.noKits}</p>;
  return (
    <div className="stack">
      <Field label={said.kit} hint={said.kitHint}>
        {(ties) => (
          <select {...ties} value={chosen} onChange={(event) => onChoose(event.target.value)}>
            {kits.map(({ name, title, notForUse }) => (
              <option key={name} value={name}>
                {notForUse ? said.kitNotForUse(title) : title}
              </option>
            ))}
          </select>
        )}
      </Field>
      <details className="quiet">
        <summary>{said.wish}</summary>
        <div className="two-fields">
          {(['bays', 'nose'] as const).map((key) => (
            <Field
              key={key}
              label={key === 'bays' ? said.wishBays : said.wishNose}
              hint={key === 'bays' ? said.wishBaysHint : said.wishNoseHint}
              fault={wishFault === key ? said.wishFault : undefined}
            >
              {(ties) => (
                <input
                  {...ties}
                  inputMode="numeric"
                  autoComplete="off"
                  value={wish[key]}
                  onChange={(event) => onWish({ ...wish, [key]: event.target.value })}
                />
              )}
            </Field>
          ))}
        </div>
      </details>
    </div>
  );
}
