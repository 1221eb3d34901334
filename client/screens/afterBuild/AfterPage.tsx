import { useState } from 'react';
import type { Review } from '#domain/forecast/after/review.ts';
import { paceWords } from '#domain/forecast/learn/paceWords.ts';
import { openedOf } from '#domain/progress/views/opened.ts';
import type { ReviewReply } from '#shared/wireReview.ts';
import { useBuild } from '../../data/useBuild.ts';
import { useFetched } from '../../data/useFetched.ts';
import { WorkLadders } from '../../drawing/WorkLadders.tsx';
import { Button } from '../../parts/Button.tsx';
import { FetchState } from '../../parts/FetchState.tsx';
import { clock, iso, minutes } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { Exports } from './Exports.tsx';
import { furthest, laddersOf } from './ladders.ts';
import { Proposals } from './Proposals.tsx';
import './afterBuild.css';

const shownFurthest = 6;

/** Planned against actual by task and crew, what the kit may learn from it, and files to take along. */
export function AfterPage() {
  const { state, now } = useBuild();
  const fetched = useFetched<ReviewReply>('review', state.number);
  const said = words.after;
  const reply = fetched.value;
  const since = openedOf(state).since;
  return (
    <div className="after-build stack-wide">
      <h1>{said.title}</h1>
      <p className="lead">
        {since === null ? said.notOpen : said.opened(clock(since, state.zone, iso(now)))}
      </p>
      <FetchState fetched={fetched} />
      {reply ? (
        <>
          <AsItWent review={reply.review} />
          <hr className="rule" />
          <Proposals reply={reply} />
          {reply.review.tasks.length > 0 ? <Exports review={reply.review} /> : null}
        </>
      ) : null}
    </div>
  );
}

function AsItWent({ review }: { readonly review: Review }) {
  const { state } = useBuild();
  const [touched, setTouched] = useState<string | null>(null);
  const said = words.after;
  if (review.tasks.length === 0) return <p className="notice">{said.none}</p>;
  const sum = (key: 'planned' | 'actual'): number =>
    review.tasks.reduce((total, task) => total + task[key], 0);
  const far = furthest(review, shownFurthest);
  return (
    <>
      <div className="after-head">
        <section className="stack" aria-labelledby="after-totals">
          <h2 id="after-totals">{said.totals.title}</h2>
          <p>
            {said.totals.line(
              review.tasks.length,
              minutes(sum('planned')),
              minutes(sum('actual')),
              sum('planned') > 0 ? paceWords(sum('actual') / sum('planned')) : said.totals.same,
            )}
          </p>
          <p className="second small">{said.ladder.more}</p>
        </section>
        <section className="stack" aria-labelledby="after-most">
          <h2 id="after-most">{said.most.title}</h2>
          {far.length === 0 ? <p>{said.most.none}</p> : null}
          <ul className="listed">
            {far.map(({ task, name, planned, actual }) => (
              <li key={task}>{said.most.line(name, minutes(actual), minutes(planned))}</li>
            ))}
          </ul>
        </section>
      </div>
      <Touched
        task={review.tasks.find(({ task }) => task === touched)}
        onClose={() => setTouched(null)}
      />
      <WorkLadders crews={laddersOf(review, state.tasks)} onTask={setTouched} />
    </>
  );
}

type TouchedProps = {
  readonly task: Review['tasks'][number] | undefined;
  readonly onClose: () => void;
};

/** Figures of the touched task. They stay in sight while the ladders scroll. */
function Touched({ task, onClose }: TouchedProps) {
  const said = words.after.ladder;
  return (
    <div role="status" className="touched no-print">
      {task ? (
        <p className="row">
          <span>
            <strong>{said.box(task.name, minutes(task.planned), minutes(task.actual))}.</strong>{' '}
            {Math.abs(task.usual - task.actual) >= 1 ? said.usual(minutes(task.usual)) : ''}{' '}
            {task.trust < 0.5 ? said.batch : ''}
          </span>
          <Button onClick={onClose}>{said.close}</Button>
        </p>
      ) : (
        <p className="second small">{said.touch}</p>
      )}
    </div>
  );
}
