import { openedOf } from '#domain/progress/views/opened.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { SpanFigure } from '../../../drawing/SpanFigure.tsx';
import { PageLink } from '../../../parts/PageLink.tsx';
import { words } from '../../../words/words.ts';
import { OpeningHead } from '../../commander/OpeningHead.tsx';
import '../../commander/commander.css';
import { useLeader } from '../useLeader.ts';
import { AnotherBuild } from './AnotherBuild.tsx';
import { AskedFor } from './AskedFor.tsx';
import { KeepOffLine } from './KeepOffLine.tsx';
import { NeedsGlance } from './NeedsGlance.tsx';
import { NeedsList } from './NeedsList.tsx';
import { RunningBuild } from './RunningBuild.tsx';
import { useNeeds } from './useNeeds.ts';

/** The leader's home: when it opens, the bridge as it stands, what needs the leader, what every crew is at. */
export function NowPage() {
  const { state, build, secret } = useBuild();
  const { go, to } = useLeader();
  const all = useNeeds();
  const empty = state.work.tasks.length === 0;
  // Before there is a plan the one thing to do comes before what there is to see.
  const first = !empty && state.plan === null;
  return (
    <>
      <OpeningHead
        more={
          state.plan ? (
            <>
              <NeedsGlance needs={all.needs} />
              <OpeningLink />
            </>
          ) : null
        }
      />
      {empty ? <p className="lead reading">{words.leader.noWorkMore}</p> : null}
      {first ? (
        <div className="needs-first">
          <NeedsList {...all} />
        </div>
      ) : null}
      {empty ? null : <SpanFigure state={state} onTask={(task) => go(`work/${task}`)} />}
      <hr className="rule" />
      <div className="now-board">
        <div className="stack-wide">
          {first ? null : <NeedsList {...all} />}
          <KeepOffLine />
          <AskedFor />
          <AnotherBuild />
          {state.bridge?.manner === 'launched' ? (
            <p>
              <PageLink to={to('launch/stopped')}>{words.launch.stopped.link}</PageLink>
            </p>
          ) : null}
          <p className="second">
            {words.leader.otherPages}{' '}
            <PageLink to={{ page: 'log', build, secret }}>{words.leader.logPage}</PageLink>
            {', '}
            <PageLink to={{ page: 'inspector', build, secret }}>
              {words.leader.inspectorPage}
            </PageLink>
            {', '}
            <PageLink to={{ page: 'commander', build, secret }}>
              {words.leader.commanderPage}
            </PageLink>
            .
          </p>
        </div>
        {empty ? null : <RunningBuild />}
      </div>
    </>
  );
}

/** On to the whole forecast; once the bridge is open, to what the build taught. */
function OpeningLink() {
  const { state } = useBuild();
  const { to } = useLeader();
  return openedOf(state).open ? (
    <PageLink to={to('after')}>{words.after.more}</PageLink>
  ) : (
    <PageLink to={to('forecast')}>{words.forecast.more}</PageLink>
  );
}
