import { type FormEvent, useState } from 'react';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { words } from '../../../words/words.ts';
import { useDraft } from '../draft/DraftContext.ts';
import { CrewFields } from './CrewFields.tsx';
import { crewIn, emptyCrew } from './crewForm.ts';

/** Adds a crew to the changes. */
export function NewCrew() {
  const { state } = useBuild();
  const { add, work } = useDraft();
  const [typed, setTyped] = useState(emptyCrew);
  const [tried, setTried] = useState(false);
  const read = crewIn(typed, state, null, new Set(work.crews.map(({ id }) => id)));

  function gather(event: FormEvent): void {
    event.preventDefault();
    setTried(true);
    if (!read.crew) return;
    add({ kind: 'crew', crew: read.crew });
    setTyped(emptyCrew);
    setTried(false);
  }

  return (
    <details className="quiet">
      <summary>{words.crews.newCrew}</summary>
      <form className="stack" onSubmit={gather} noValidate>
        <CrewFields isNew typed={typed} faults={tried ? read.faults : {}} onChange={setTyped} />
        <p>
          <Button type="submit">{words.crews.add}</Button>
        </p>
      </form>
    </details>
  );
}
