import { type FormEvent, useState } from 'react';
import type { Crew } from '#domain/tasks/work.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { PageLink } from '../../../parts/PageLink.tsx';
import { words } from '../../../words/words.ts';
import { useDraft } from '../draft/DraftContext.ts';
import { useLeader } from '../useLeader.ts';
import { CrewFields } from './CrewFields.tsx';
import { crewIn, typedOf } from './crewForm.ts';

const nothingTaken: ReadonlySet<string> = new Set();

/** Who a crew is for the plan: gathered with the other changes. When how many of it are there is a page of its own. */
export function CrewForm({ crew }: { readonly crew: Crew }) {
  const { state } = useBuild();
  const { add, work } = useDraft();
  const { to } = useLeader();
  const draft = work.crews.find(({ id }) => id === crew.id) ?? crew;
  const [typed, setTyped] = useState(() => typedOf(draft, state));
  const [tried, setTried] = useState(false);
  const read = crewIn(typed, state, crew, nothingTaken);

  function gather(event: FormEvent): void {
    event.preventDefault();
    setTried(true);
    if (!read.crew) return;
    const { name, chief = null, attached } = read.crew;
    add({ kind: 'crew-name', crew: crew.id, name, chief, attached });
  }

  return (
    <form
      className="stack"
      onSubmit={gather}
      noValidate
      aria-label={words.crews.changeOf(crew.name)}
    >
      <h3>{words.crews.change}</h3>
      <CrewFields typed={typed} faults={tried ? read.faults : {}} onChange={setTyped} />
      <p>
        <Button type="submit">{words.crews.add}</Button>
      </p>
      <p>
        <PageLink to={to('hours')} className="button plain">
          {words.crews.toHours}
        </PageLink>
      </p>
    </form>
  );
}
