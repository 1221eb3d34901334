import { type FormEvent, useRef, useState } from 'react';
import type { Concession } from '#domain/progress/command.ts';
import { isOwnWork } from '#domain/progress/rules/holds.ts';
import { inWords } from '#domain/progress/words.ts';
import { measuresThat } from '#domain/tasks/measured.ts';
import type { Task } from '#domain/tasks/task.ts';
import { usePorts } from '../../data/ports/ports.ts';
import { useBuild } from '../../data/useBuild.ts';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import type { Say } from '../../parts/useSay.ts';
import { words } from '../../words/words.ts';
import { Beyond } from './Beyond.tsx';
import { FailForm } from './FailForm.tsx';
import { MeasureField } from './MeasureField.tsx';
import { measureFaults, type Typed, valuesIn } from './measures.ts';

type Props = {
  readonly task: Task;
  readonly say: Say['say'];
  readonly busy: boolean;
};

/** Passing or failing one hold point: values against their limits, a name, and what failing brings back. */
export function InspectionForm({ task, say, busy }: Props) {
  const { state, linkKey } = useBuild();
  const { storage } = usePorts();
  const nameKey = `spanwright.inspector.${linkKey}`;
  const [name, setName] = useState(() => storage.read(nameKey) ?? '');
  const [typed, setTyped] = useState<Typed>({});
  const [remark, setRemark] = useState('');
  const [reason, setReason] = useState('');
  const [conceded, setConceded] = useState<Concession | null>(null);
  const [failing, setFailing] = useState(false);
  const [tried, setTried] = useState<'pass' | 'fail' | null>(null);
  const form = useRef<HTMLFormElement>(null);
  const said = words.inspector;

  const measures = task.hold?.measures ?? [];
  const faults = measureFaults(measures, typed);
  const values = valuesIn(measures, typed);
  const beyond = measuresThat(measures, values, 'beyond');
  const outside = measuresThat(measures, values, 'outside');
  const concession = beyond.length > 0 ? conceded : null;
  const reasonFault =
    tried === 'pass' && outside.length > 0 && reason.trim() === '' ? said.reasonMissing : undefined;
  /** What keeps it from passing: a concession lifts the limits and nothing else. */
  const stopped =
    name.trim() === '' ||
    faults.size > (concession ? beyond.length : 0) ||
    (outside.length > 0 && reason.trim() === '') ||
    (concession !== null && Object.values(concession).some((text) => text.trim() === ''));
  const nameFault = tried !== null && name.trim() === '' ? said.nameMissing : undefined;
  // What is plainly outside is said while it is typed; what is only missing when somebody tries to pass.
  const faultOf = (key: string): string | undefined =>
    tried === 'pass' || (typed[key] !== undefined && typed[key] !== '')
      ? faults.get(key)
      : undefined;

  function focusFirstFault(): void {
    requestAnimationFrame(() =>
      form.current
        ?.querySelector<HTMLElement>('[aria-invalid], .measure-yes:has(.fault) input')
        ?.focus(),
    );
  }

  function pass(event: FormEvent): void {
    event.preventDefault();
    setTried('pass');
    if (stopped) {
      focusFirstFault();
      return;
    }
    storage.write(nameKey, name.trim());
    void say('pass-hold', {
      task: task.id,
      name: name.trim(),
      values,
      remark: remark.trim(),
      ...(outside.length > 0 && { reason: reason.trim() }),
      ...(concession && { concession: trimmed(concession) }),
    });
  }

  function fail(why: string): void {
    setTried('fail');
    if (name.trim() === '') {
      focusFirstFault();
      return;
    }
    storage.write(nameKey, name.trim());
    void say('fail-hold', { task: task.id, name: name.trim(), values, why });
  }

  return (
    <div className="inspection stack-wide">
      <form ref={form} className="stack-wide" onSubmit={pass} noValidate>
        {task.cautions.length > 0 ? (
          <div className="notice stack">
            <h3>{said.cautions}</h3>
            <ul className="stack">
              {task.cautions.map((caution) => (
                <li key={caution}>{caution}</li>
              ))}
            </ul>
            <p className="second small">{words.planningAid}</p>
          </div>
        ) : null}
        {measures.length > 0 ? (
          <div className="measures">
            {measures.map((measure) => (
              <MeasureField
                key={measure.key}
                measure={measure}
                value={typed[measure.key]}
                fault={faultOf(measure.key)}
                onChange={(value) => setTyped({ ...typed, [measure.key]: value })}
              />
            ))}
          </div>
        ) : null}
        {beyond.length > 0 ? (
          <Beyond
            measures={beyond}
            values={values}
            concession={concession}
            tried={tried === 'pass'}
            onChange={setConceded}
          />
        ) : null}
        {outside.length > 0 ? (
          <Field
            label={said.reason}
            hint={said.reasonHint(inWords(outside.map((measure) => measure.name)))}
            fault={reasonFault}
          >
            {(ties) => (
              <textarea
                {...ties}
                rows={2}
                maxLength={400}
                value={reason}
                onChange={(event) => setReason(event.target.value)}
              />
            )}
          </Field>
        ) : null}
        <div className="measures">
          <Field label={said.name} hint={said.nameHint} fault={nameFault}>
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
          <Field label={said.remark} hint={said.remarkHint}>
            {(ties) => (
              <input
                {...ties}
                autoComplete="off"
                maxLength={400}
                value={remark}
                onChange={(event) => setRemark(event.target.value)}
              />
            )}
          </Field>
        </div>
        <div role="status">
          {isOwnWork(state, task.id, name) ? (
            <p className="notice warn">{said.ownWorkNow(name.trim())}</p>
          ) : null}
          {state.halt ? <p className="warn">{said.halted}</p> : null}
        </div>
        <div className="inspection-choice">
          <Button type="submit" look="solid" disabled={busy} aria-label={said.passThis(task.name)}>
            {said.pass}
          </Button>
          <Button aria-expanded={failing} disabled={busy} onClick={() => setFailing(!failing)}>
            {said.failOpen}
          </Button>
        </div>
      </form>
      {failing ? <FailForm task={task} busy={busy} onFail={fail} /> : null}
    </div>
  );
}

function trimmed({ name, authority, reason }: Concession): Concession {
  return { name: name.trim(), authority: authority.trim(), reason: reason.trim() };
}
