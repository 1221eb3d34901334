import { useState } from 'react';
import { usePorts } from '../../../data/ports/ports.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { PageLink } from '../../../parts/PageLink.tsx';
import { SaidLine } from '../../../parts/SaidLine.tsx';
import { type Say, useSay } from '../../../parts/useSay.ts';
import { iso } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { OfferNotice } from '../plan/OfferNotice.tsx';
import { useLeader } from '../useLeader.ts';
import { type Need, needsOf } from './needs.ts';

/** Old notes are of no use once their number is long past; the list is kept short on the device. */
const seenKept = 200;

/** What needs the leader now, each with the one thing to do about it. */
export function NeedsList() {
  const { state, now, linkKey } = useBuild();
  const { storage } = usePorts();
  const { said, busy, say } = useSay();
  const storeKey = `spanwright.seen.${linkKey}`;
  const [seen, setSeen] = useState<readonly string[]>(() => read(storage.read(storeKey)));
  const minute = Math.floor(now / 60_000) * 60_000;
  const needs = needsOf(state, iso(minute), new Set(seen));

  function take(need: Need): void {
    const next = [...seen, need.key].slice(-seenKept);
    storage.write(storeKey, JSON.stringify(next));
    setSeen(next);
  }

  return (
    <section className="stack" aria-label={words.leader.needs}>
      <h2>{words.leader.needs}</h2>
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

function read(text: string | null): readonly string[] {
  try {
    const kept: unknown = JSON.parse(text ?? '[]');
    return Array.isArray(kept) ? kept.filter((one) => typeof one === 'string') : [];
  } catch {
    return [];
  }
}
