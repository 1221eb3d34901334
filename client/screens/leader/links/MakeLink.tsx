import { type FormEvent, useState } from 'react';
import type { Role } from '#domain/progress/command.ts';
import type { LinkRequest } from '#shared/wire.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { words } from '../../../words/words.ts';

type Props = { readonly onMake: (request: LinkRequest) => void; readonly busy: boolean };

const roles: readonly Role[] = ['chief', 'log', 'inspector', 'commander', 'leader'];

/** Makes a link: which page, of which crew, for whom. */
export function MakeLink({ onMake, busy }: Props) {
  const { state } = useBuild();
  const [role, setRole] = useState<Role>('chief');
  const [crew, setCrew] = useState(state.work.crews[0]?.id ?? '');
  const [name, setName] = useState('');
  const [tried, setTried] = useState(false);
  const texts = words.links;

  function make(event: FormEvent): void {
    event.preventDefault();
    setTried(true);
    if (name.trim() === '') return;
    onMake({ role, name: name.trim(), ...(role === 'chief' && { crew }) });
    setName('');
    setTried(false);
  }

  return (
    <form className="stack make-link" onSubmit={make} noValidate>
      <h2>{texts.make}</h2>
      <div className="two-fields">
        <Field label={texts.role}>
          {(ties) => (
            <select
              {...ties}
              value={role}
              onChange={(event) => setRole(event.target.value as Role)}
            >
              {roles
                .filter((one) => one !== 'chief' || state.work.crews.length > 0)
                .map((one) => (
                  <option key={one} value={one}>
                    {words.pages[one]}
                  </option>
                ))}
            </select>
          )}
        </Field>
        {role === 'chief' ? (
          <Field label={texts.crew}>
            {(ties) => (
              <select {...ties} value={crew} onChange={(event) => setCrew(event.target.value)}>
                {state.work.crews.map((one) => (
                  <option key={one.id} value={one.id}>
                    {one.name}
                  </option>
                ))}
              </select>
            )}
          </Field>
        ) : null}
        <Field
          label={texts.name}
          hint={texts.nameHint}
          fault={tried && name.trim() === '' ? texts.nameFault : undefined}
        >
          {(ties) => (
            <input
              {...ties}
              autoComplete="off"
              maxLength={60}
              value={name}
              onChange={(event) => setName(event.target.value)}
            />
          )}
        </Field>
      </div>
      <p>
        <Button type="submit" disabled={busy}>
          {texts.make}
        </Button>
      </p>
    </form>
  );
}
