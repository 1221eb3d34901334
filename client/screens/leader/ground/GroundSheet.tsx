import type { Ground } from '#domain/bridge/ground.ts';
import { words } from '../../../words/words.ts';
import { formFields, formOf } from './groundForm.ts';
import './ground.css';

/** Every number of the ground as measured, and which were not: for paper, where the form is not printed. */
export function GroundSheet({ ground }: { readonly ground: Ground }) {
  const said = words.ground;
  const { values } = formOf(ground);
  return (
    <section className="stack ground-sheet">
      <h3>{said.printed(ground.name)}</h3>
      <dl className="facts">
        {formFields.map((field) => (
          <div key={field.field}>
            <dt>{said.fields[field.field]}</dt>
            <dd className={values[field.field] === null ? 'second' : ''}>
              {values[field.field] ?? said.notMeasured}
            </dd>
          </div>
        ))}
        {(['near', 'far'] as const).map((bank) => (
          <div key={bank}>
            <dt>{said.bank[bank]}</dt>
            <dd>
              {ground[bank].kind === 'made' ? said.made : said.natural},{' '}
              {said.soilsShort[ground[bank].soil ?? '']}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
