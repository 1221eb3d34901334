import { type FormEvent, useState } from 'react';
import { crewLabel } from '#domain/progress/words.ts';
import type { Minutes, People, Task } from '#domain/tasks/task.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { words } from '../../../words/words.ts';
import { useDraft } from '../draft/DraftContext.ts';
import { type Three, ThreeNumbers, threeIn } from './ThreeNumbers.tsx';

/** A task of more crews than this shows the people of each on demand. */
const mostOpen = 3;

/** Minutes and people of a task, as they are with the changes gathered so far. */
export function EditMinutes({ task }: { readonly task: Task }) {
  const { state } = useBuild();
  const { add, work } = useDraft();
  const draft = work.tasks.find(({ id }) => id === task.id) ?? task;
  const [minutes, setMinutes] = useState<Three>(() => textsOfMinutes(draft.minutes));
  const [people, setPeople] = useState<readonly Three[]>(() =>
    draft.needs.map((need) => textsOfPeople(need.people)),
  );
  const [tried, setTried] = useState(false);
  const texts = words.task;
  const typedMinutes = threeIn(minutes, false);
  const typedPeople = people.map((three) => threeIn(three, true));

  function gather(event: FormEvent): void {
    event.preventDefault();
    setTried(true);
    if (!typedMinutes || typedPeople.some((three) => three === null)) return;
    const [quick, likely, slow] = typedMinutes;
    const wanted = typedPeople.flatMap((three): People[] =>
      three ? [{ least: three[0], usual: three[1], most: three[2] }] : [],
    );
    const newMinutes = { quick, likely, slow };
    const minutesChange = !same(newMinutes, task.minutes);
    const peopleChange = wanted.some((one, at) => !same(one, task.needs[at]?.people));
    add({
      kind: 'task',
      task: task.id,
      ...(minutesChange && { minutes: newMinutes }),
      ...(peopleChange && { people: wanted }),
    });
  }

  const needs = draft.needs.map((need, at) => {
    const crews = need.anyOf.map((crew) => crewLabel(state, crew)).join(texts.orWords);
    const value = people[at];
    if (!value) return null;
    return (
      <ThreeNumbers
        // biome-ignore lint/suspicious/noArrayIndexKey: the needs of a task have nothing but their place
        key={at}
        legend={texts.peopleOf(crews === '' ? texts.anyCrew : crews)}
        labels={[texts.leastPeople, texts.usualPeople, texts.mostPeople]}
        value={value}
        fault={tried && typedPeople[at] === null ? texts.peopleFault : null}
        onChange={(next) => setPeople(people.map((one, place) => (place === at ? next : one)))}
      />
    );
  });

  return (
    <form className="stack" onSubmit={gather} noValidate>
      <ThreeNumbers
        legend={texts.minutes}
        labels={[texts.quick, texts.likely, texts.slow]}
        value={minutes}
        fault={tried && !typedMinutes ? texts.minutesFault : null}
        onChange={setMinutes}
      />
      {draft.needs.length > mostOpen ? (
        <details className="quiet" open={tried && typedPeople.includes(null)}>
          <summary>{texts.peopleAll(draft.needs.length)}</summary>
          {needs}
        </details>
      ) : (
        needs
      )}
      <p>
        <Button type="submit">{texts.addChange}</Button>
      </p>
    </form>
  );
}

function textsOfMinutes({ quick, likely, slow }: Minutes): Three {
  return [String(quick), String(likely), String(slow)];
}

function textsOfPeople({ least, usual, most }: People): Three {
  return [String(least), String(usual), String(most)];
}

function same(one: object, other: object | undefined): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
