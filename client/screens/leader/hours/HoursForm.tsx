import { type FormEvent, useRef, useState } from 'react';
import { workAsTold } from '#domain/progress/views/asTold.ts';
import { changedCrew } from '#domain/tasks/change.ts';
import type { Crew, Work } from '#domain/tasks/work.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { atMinute, clock, people as peopleWords } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { useDraft } from '../draft/DraftContext.ts';
import { HoursLines } from './HoursLines.tsx';
import { CountField, HourField } from './HoursRow.tsx';
import { hoursChange, hoursIn, typedHoursOf } from './hoursForm.ts';
import { shortOf } from './shortOf.ts';

type Props = {
  /** The crew without what the leader has gathered of its hours, and with it. */
  readonly before: Crew;
  readonly crew: Crew;
  /** The order of work as it would be, all crews of it. */
  readonly work: Work;
};

/** When how many of a crew are there: gathered with the other changes. */
export function HoursForm({ before, crew, work }: Props) {
  const { state } = useBuild();
  const { add } = useDraft();
  const [typed, setTyped] = useState(() => typedHoursOf(crew, state));
  const [tried, setTried] = useState(false);
  const [said, setSaid] = useState('');
  const form = useRef<HTMLFormElement>(null);
  const texts = words.hours;
  const others = work.crews.filter(({ id }) => id !== crew.id);
  const read = hoursIn(typed, state, others);
  const faults = tried ? read.faults : {};

  function change(more: Partial<typeof typed>): void {
    setTyped({ ...typed, ...more });
    setSaid('');
  }

  function gather(event: FormEvent): void {
    event.preventDefault();
    setTried(true);
    if (!read.hours) {
      setSaid(texts.mend);
      // The marks are there once the page has been drawn again.
      setTimeout(() => form.current?.querySelector<HTMLElement>('[aria-invalid]')?.focus());
      return;
    }
    const hours = hoursChange(before, read.hours);
    const told = workAsTold(state).crews.find(({ id }) => id === crew.id) ?? before;
    const people = hours.people ?? told.people;
    const crews = work.crews.map((one) =>
      one.id === crew.id ? { ...changedCrew(before, hours), people } : one,
    );
    const [short] = shortOf({ ...work, crews });
    if (short) {
      const at = clock(atMinute(state.start, short.at), state.zone, state.start);
      setSaid(texts.faults.short(short.crew.name, peopleWords(short.missing), at));
      return;
    }
    add(hours);
    setSaid(Object.keys(hours).length > 2 ? texts.added : texts.same);
  }

  return (
    <form
      ref={form}
      className="stack-wide hours-form"
      onSubmit={gather}
      noValidate
      aria-label={texts.changeOf(crew.name)}
    >
      <div className="hours-three">
        <CountField
          label={texts.people}
          value={typed.people}
          fault={faults.people}
          onChange={(people) => change({ people })}
        />
        <HourField
          label={texts.from}
          hint={texts.whole}
          value={typed.from}
          fault={faults.from}
          onChange={(from) => change({ from })}
        />
        <HourField
          label={texts.to}
          hint={texts.whole}
          value={typed.to}
          fault={faults.to}
          onChange={(to) => change({ to })}
        />
      </div>
      <HoursLines
        title={texts.rests}
        more={texts.restMore}
        none={`${texts.noRests}.`}
        name={texts.rest}
        add={texts.addRest}
        lines={typed.rests}
        blank={{ from: '', to: '', people: '' }}
        onChange={(rests) => change({ rests })}
      >
        {({ key, ...line }, set) => (
          <>
            <HourField
              label={texts.begins}
              value={line.from}
              fault={faults[`rests.${key}.from`]}
              onChange={(from) => set({ from })}
            />
            <HourField
              label={texts.ends}
              value={line.to}
              fault={faults[`rests.${key}.to`]}
              onChange={(to) => set({ to })}
            />
            <CountField
              label={texts.howMany}
              hint={texts.wholeCrew}
              value={line.people}
              fault={faults[`rests.${key}.people`]}
              onChange={(people) => set({ people })}
            />
          </>
        )}
      </HoursLines>
      {others.length > 0 ? (
        <HoursLines
          title={texts.lent}
          more={texts.lentMore}
          none={`${texts.noneLent}.`}
          name={texts.lending}
          add={texts.addLent}
          lines={typed.lent}
          blank={{ crew: '', from: '', to: '', people: '' }}
          onChange={(lent) => change({ lent })}
        >
          {({ key, ...line }, set) => (
            <>
              <Field label={texts.toCrew} fault={faults[`lent.${key}.crew`]}>
                {(ties) => (
                  <select
                    {...ties}
                    value={line.crew}
                    onChange={(event) => set({ crew: event.target.value })}
                  >
                    <option value="">{texts.chooseCrew}</option>
                    {others.map(({ id, name }) => (
                      <option key={id} value={id}>
                        {name}
                      </option>
                    ))}
                  </select>
                )}
              </Field>
              <CountField
                label={texts.howMany}
                value={line.people}
                fault={faults[`lent.${key}.people`]}
                onChange={(people) => set({ people })}
              />
              <HourField
                label={texts.begins}
                value={line.from}
                fault={faults[`lent.${key}.from`]}
                onChange={(from) => set({ from })}
              />
              <HourField
                label={texts.ends}
                hint={texts.endsOpen}
                value={line.to}
                fault={faults[`lent.${key}.to`]}
                onChange={(to) => set({ to })}
              />
            </>
          )}
        </HoursLines>
      ) : (
        <p>{texts.noOther}</p>
      )}
      <HoursLines
        title={texts.strength}
        more={texts.strengthMore}
        none={`${texts.steady}.`}
        name={texts.step}
        add={texts.addStep}
        lines={typed.strength}
        blank={{ from: '', people: '' }}
        onChange={(strength) => change({ strength })}
      >
        {({ key, ...line }, set) => (
          <>
            <HourField
              label={texts.begins}
              value={line.from}
              fault={faults[`strength.${key}.from`]}
              onChange={(from) => set({ from })}
            />
            <CountField
              label={texts.peopleThen}
              value={line.people}
              fault={faults[`strength.${key}.people`]}
              onChange={(people) => set({ people })}
            />
          </>
        )}
      </HoursLines>
      <div className="row">
        <Button type="submit" look="solid">
          {texts.add}
        </Button>
        <p role="status" className={said === texts.added || said === texts.same ? '' : 'warn'}>
          {said}
        </p>
      </div>
    </form>
  );
}
