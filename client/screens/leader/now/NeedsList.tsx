import { Button } from '../../../parts/Button.tsx';
import { PageLink } from '../../../parts/PageLink.tsx';
import { SaidLine } from '../../../parts/SaidLine.tsx';
import { type Say, useSay } from '../../../parts/useSay.ts';
import { words } from '../../../words/words.ts';
import { OfferNotice } from '../plan/OfferNotice.tsx';
import { useLeader } from '../useLeader.ts';
import { needsId } from './NeedsGlance.tsx';
import type { Need } from './needs.ts';
import type { Needs } from './useNeeds.ts';

/** What needs the leader now, each with the one thing to do about it. */
export function NeedsList({ needs, take }: Needs) {
  const { said, busy, say } = useSay();

  return (
    <section className="stack" aria-label={words.leader.needs}>
      <h2 id={needsId} tabIndex={-1}>
        {words.leader.needs}
      </h2>
      <OfferNotice />
      {needs.length === 0 ? <p>{words.leader.needsNothing}</p> : null}
      <ul className="needs">
        {needs.map((need) => (
          <li key={need.key}>
            <p className={need.grave ? 'warn' : ''}>{need.sentence}</p>
            <div className="row">
              <NeedAction need={need} onSeen={() => take(need)} say={say} busy={busy} />
            </div>
          </li>
        ))}
      </ul>
      <SaidLine said={said} />
    </section>
  );
}

type ActionProps = {
  readonly need: Need;
  readonly onSeen: () => void;
  readonly say: Say['say'];
  readonly busy: boolean;
};

function NeedAction({ need, onSeen, say, busy }: ActionProps) {
  const { to, toTask } = useLeader();
  const { task } = need;
  const texts = words.leader;
  const look = task ? (
    <PageLink to={toTask(task)} className="button plain">
      {texts.openTask}
    </PageLink>
  ) : null;
  switch (need.can) {
    case 'settle':
      return task ? (
        <>
          <Button disabled={busy} onClick={() => void say('settle-task', { task, status: 'done' })}>
            {texts.settleDone}
          </Button>
          <Button
            disabled={busy}
            onClick={() => void say('settle-task', { task, status: 'stopped' })}
          >
            {texts.settleStopped}
          </Button>
          {look}
        </>
      ) : null;
    case 'seen':
      return (
        <>
          {look}
          <Button aria-label={texts.seenOne(need.sentence)} onClick={onSeen}>
            {texts.seen}
          </Button>
        </>
      );
    case 'plan':
      return (
        <>
          <PageLink to={to('plan')} className="button">
            {need.key === 'no plan' ? texts.makePlan : texts.planAgain}
          </PageLink>
          {need.key === 'no plan' ? null : (
            <Button aria-label={texts.seenOne(need.sentence)} onClick={onSeen}>
              {texts.seen}
            </Button>
          )}
        </>
      );
    case 'crews':
      return (
        <PageLink to={to('crews')} className="button">
          {texts.giveCrews}
        </PageLink>
      );
    case 'ground':
      return (
        <PageLink to={to('ground')} className="button">
          {texts.measure}
        </PageLink>
      );
    case 'load':
      return (
        <PageLink to={to('crews')} className="button plain">
          {texts.arrival}
        </PageLink>
      );
    case 'lend':
      return (
        <>
          <PageLink to={to('hours')} className="button">
            {texts.lend}
          </PageLink>
          <Button aria-label={texts.seenOne(need.sentence)} onClick={onSeen}>
            {texts.seen}
          </Button>
        </>
      );
    case 'links':
      return (
        <>
          <PageLink to={to('links')} className="button">
            {texts.toLinks}
          </PageLink>
          <Button aria-label={texts.seenOne(need.sentence)} onClick={onSeen}>
            {texts.seen}
          </Button>
        </>
      );
    case 'look':
      return look;
  }
}
