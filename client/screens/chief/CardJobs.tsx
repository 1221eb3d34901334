import { useState } from 'react';
import { orderIndex } from '#domain/progress/orderIndex.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { crewNow, type Job } from '#domain/progress/views/crewNow.ts';
import { openedOf } from '#domain/progress/views/opened.ts';
import { Button } from '../../parts/Button.tsx';
import { clock, iso } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { useCard } from './card.ts';
import { comingKeepOff, crewThatAsks } from './comingKeepOff.ts';
import { JobBlock } from './JobBlock.tsx';
import { KeepOffNext } from './KeepOffNext.tsx';
import { MoreSheet } from './MoreSheet.tsx';
import { StrengthSheet } from './StrengthSheet.tsx';
import { UndoLast } from './UndoLast.tsx';

/** Two jobs are as much as a card can hold, for two half-crews. */
const mostJobs = 2;

/** The crew's jobs now, what comes next, and what else can be told. */
export function CardJobs() {
  const { state, crew, fit, now, awake, press } = useCard();
  const [sheet, setSheet] = useState<'strength' | 'more' | null>(null);
  const said = words.chief.card;
  const { now: atWork, ready, next } = crewNow(state, crew, iso(now));
  const startable = state.halt ? [] : ready.filter((job) => !isForOthersToAsk(state, job, crew));
  const jobs = startable.slice(0, Math.max(0, mostJobs - atWork.length));
  const first = jobs.find(({ ahead }) => ahead)?.ahead;
  const keepOff = state.halt ? null : comingKeepOff(state, crew, now);
  const later = [...startable.filter((job) => !jobs.includes(job)), ...next].slice(0, 2);
  return (
    <>
      {atWork.map((job) => (
        <JobBlock key={job.task} job={job} />
      ))}
      {/* Getting people off comes before starting anything new. */}
      {keepOff ? <KeepOffNext task={keepOff.task} own={keepOff.own} /> : null}
      {first ? (
        <section className="stack-tight">
          <h2>{said.first(first.name)}</h2>
          <p>{first.sentence}</p>
        </section>
      ) : null}
      {jobs.map((job) => (
        <JobBlock key={job.task} job={job} />
      ))}
      {atWork.length + jobs.length === 0 && !keepOff ? <NoJob next={[...ready, ...next]} /> : null}
      <div className="card-row">
        <Button disabled={!awake} onClick={() => press(() => setSheet('strength'))}>
          {words.chief.strength.button(fit)}
        </Button>
        <Button disabled={!awake} onClick={() => press(() => setSheet('more'))}>
          {words.chief.more.button}
        </Button>
      </div>
      <UndoLast />
      <section className="card-next" aria-label={said.next}>
        {later.length === 0 ? <p className="second">{said.nothingNext}</p> : null}
        {later.map((job) => (
          <p key={job.task}>{said.following(job.name, said.people(job.people))}</p>
        ))}
      </section>
      {sheet === 'strength' ? <StrengthSheet onClose={() => setSheet(null)} /> : null}
      {sheet === 'more' ? <MoreSheet onClose={() => setSheet(null)} /> : null}
    </>
  );
}

/** A keep-off task in which the crew takes part, and which another crew asks for. */
function isForOthersToAsk(state: BuildState, job: Job, crew: string): boolean {
  const task = orderIndex(state.work).task.get(job.task);
  if (!job.keepOff || !task) return false;
  const asking = crewThatAsks(state, task);
  return asking !== undefined && asking !== crew;
}

/** Nothing to do now: why, and what it waits for. */
function NoJob({ next }: { readonly next: readonly Job[] }) {
  const { state } = useCard();
  const said = words.chief.card;
  const opened = openedOf(state);
  if (opened.since)
    return <h2 className="job-name">{said.open(clock(opened.since, state.zone))}</h2>;
  if (!state.plan && state.work.tasks.length === 0) {
    return (
      <section className="stack">
        <h2 className="job-name">{said.noPlan}</h2>
        <p className="lead">{said.noPlanMore}</p>
      </section>
    );
  }
  const [first] = next;
  return (
    <section className="stack">
      <h2 className="job-name">{first ? said.nothing : said.allDone}</h2>
      <p>{state.halt ? said.halted : said.nothingMore}</p>
      {first && first.readiness.waitsFor.length > 0 ? (
        <>
          <h3>
            {first.name}: {said.waits}
          </h3>
          <ul className="stack">
            {first.readiness.waitsFor.map(({ kind, of, sentence }) => (
              <li key={`${kind}.${of}`}>{sentence}</li>
            ))}
          </ul>
        </>
      ) : null}
    </section>
  );
}
