import { type FormEvent, useState } from 'react';
import { rollCall } from '#domain/progress/rules/halt.ts';
import { crewLabel } from '#domain/progress/words.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { HaltNotice } from '../../../parts/HaltNotice.tsx';
import { SaidLine } from '../../../parts/SaidLine.tsx';
import { useSay } from '../../../parts/useSay.ts';
import { iso } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';

/** A halt as the leader has it: the roll call, crew by crew, and lifting it once all have answered. */
export function HaltPanel() {
  const { state } = useBuild();
  return (
    <HaltNotice>
      {state.halt ? (
        <>
          <p>{words.halt.nothingResumes}</p>
          <RollCall />
        </>
      ) : null}
    </HaltNotice>
  );
}

function RollCall() {
  const { state, now, you } = useBuild();
  const { said, busy, say } = useSay();
  const [name, setName] = useState(you.name);
  const [tried, setTried] = useState(false);
  const calls = rollCall(state, iso(now));
  const answered = calls.filter((call) => call.answered).length;
  const all = answered === calls.length;
  const texts = words.leader.halt;

  function lift(event: FormEvent): void {
    event.preventDefault();
    setTried(true);
    if (name.trim() !== '') void say('lift-halt', { name: name.trim() });
  }

  return (
    <div className="stack-wide">
      <div className="stack">
        <h3>
          {texts.rollCall}: {texts.count(answered, calls.length)}
        </h3>
        <ul className="roll-call">
          {calls.map(({ crew, answered: done, sentence }) => {
            const fit = state.crews[crew]?.fit ?? 0;
            return (
              <li key={crew}>
                <span className={done ? '' : 'warn'}>{sentence}</span>
                {done ? null : (
                  <Button
                    disabled={busy}
                    aria-label={texts.tellOne(crewLabel(state, crew), fit)}
                    onClick={() => void say('acknowledge-halt', { crew, people: fit, of: fit })}
                  >
                    {fit} / {fit} {texts.tell}
                  </Button>
                )}
              </li>
            );
          })}
        </ul>
      </div>
      <form className="row lift" onSubmit={lift} noValidate>
        <Field
          label={texts.name}
          hint={all ? undefined : texts.waiting}
          fault={tried && name.trim() === '' ? texts.nameMissing : undefined}
        >
          {(ties) => (
            <input
              {...ties}
              autoComplete="name"
              maxLength={60}
              value={name}
              onChange={(event) => setName(event.target.value)}
            />
          )}
        </Field>
        <Button type="submit" look={all ? 'solid' : 'line'} disabled={busy}>
          {texts.lift}
        </Button>
      </form>
      <SaidLine said={said} />
    </div>
  );
}
