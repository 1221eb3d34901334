import { useState } from 'react';
import { orderIndex } from '#domain/progress/orderIndex.ts';
import type { Job } from '#domain/progress/views/crewNow.ts';
import { crewLabel, inWords } from '#domain/progress/words.ts';
import { BridgeGlimpse } from '../../drawing/BridgeGlimpse.tsx';
import { Button } from '../../parts/Button.tsx';
import { clock, minutes, percent } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { Cautions } from './Cautions.tsx';
import { useCard } from './card.ts';
import { KeepOffAsk } from './KeepOffAsk.tsx';
import { PartSheet } from './PartSheet.tsx';
import { StopSheet } from './StopSheet.tsx';
import { Tick } from './Tick.tsx';

/** More crews than this are counted, not named: a card is read at a glance. */
const mostNamed = 5;

/** One job of the card: what, who, where, what can hurt, and the one big tick. */
export function JobBlock({ job }: { readonly job: Job }) {
  const { state, crew, send, awake, press } = useCard();
  const [sheet, setSheet] = useState<'stop' | 'part' | null>(null);
  const task = orderIndex(state.work).task.get(job.task);
  const standing = state.tasks[job.task];
  if (!task || !standing) return null;
  const said = words.chief.card;
  const begun = job.status !== 'to-come';
  const body = { task: job.task, crew };
  const planned = state.plan?.tasks.find((one) => one.task === job.task);
  const usual = minutes(planned ? planned.finish - planned.start : task.minutes.likely);
  const side = task.place?.side;

  return (
    <article className={`job job-${job.status}`} aria-label={job.name}>
      <h2 className="job-name">{job.name}</h2>
      <p className="job-who">
        {[
          said.people(job.people),
          ...(side ? [said.side[side]] : []),
          ...(job.with.length > 0
            ? [
                job.with.length > mostNamed
                  ? said.withMany(job.with.length)
                  : said.with(inWords(job.with.map((each) => crewLabel(state, each)))),
              ]
            : []),
        ].join(' · ')}
      </p>
      <p className="second">
        {[
          job.startedAt ? said.since(clock(job.startedAt, state.zone), usual) : said.usually(usual),
          said.number(job.number),
          ...(standing.attempt > 1 ? [said.attempt(standing.attempt)] : []),
          ...(job.part > 0 && job.part < 1 ? [said.part(percent(job.part))] : []),
        ].join(' · ')}
      </p>
      {job.ahead ? <p className="warn">{said.outOfTurn(job.ahead.name)}</p> : null}
      {standing.disputed ? <p className="warn">{said.disputed}</p> : null}
      {standing.flagged ? <p className="warn">{said.flagged}</p> : null}
      {job.status === 'stopped' ? <p className="warn">{said.stoppedWhy(job.why ?? '')}</p> : null}
      <BridgeGlimpse state={state} task={task} />
      {task.tools.length > 0 && !begun ? <p>{said.bring(task.tools.join(', '))}</p> : null}
      <Cautions cautions={task.cautions} begun={begun} />

      {job.hold ? (
        <p className="notice">{said.hold}</p>
      ) : job.keepOff && !begun ? (
        <KeepOffAsk task={job.task} />
      ) : (
        <>
          {job.status === 'at-work' ? (
            <Tick
              mark="done"
              label={said.done}
              about={job.name}
              onPress={() => void send('tell-finished', body)}
            />
          ) : (
            <Tick
              mark="start"
              label={begun ? said.goOn : said.start}
              about={job.name}
              off={state.halt !== null}
              onPress={() => void send(begun ? 'tell-resumed' : 'tell-started', body)}
            />
          )}
          {state.halt ? <p>{said.halted}</p> : null}
          <div className="card-row">
            {job.status === 'at-work' ? (
              <>
                <Button disabled={!awake} onClick={() => press(() => setSheet('stop'))}>
                  {said.stopped}
                </Button>
                <Button disabled={!awake} onClick={() => press(() => setSheet('part'))}>
                  {said.partDone}
                </Button>
              </>
            ) : (
              <Button
                disabled={!awake}
                onClick={() => press(() => void send('tell-finished', body))}
              >
                {said.doneAlready}
              </Button>
            )}
          </div>
        </>
      )}
      {sheet === 'stop' ? <StopSheet job={job} onClose={() => setSheet(null)} /> : null}
      {sheet === 'part' ? <PartSheet job={job} onClose={() => setSheet(null)} /> : null}
    </article>
  );
}
