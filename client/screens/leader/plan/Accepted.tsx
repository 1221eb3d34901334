import { useEffect, useRef } from 'react';
import { PageLink } from '../../../parts/PageLink.tsx';
import { words } from '../../../words/words.ts';
import { useDraft } from '../draft/DraftContext.ts';
import { useLeader } from '../useLeader.ts';

/** Says that a plan has just been accepted and leads on to the build; the comparison above which it stood is gone. */
export function Accepted() {
  const { trial } = useDraft();
  const { to } = useLeader();
  const line = useRef<HTMLParagraphElement>(null);
  const accepted = trial.state.step === 'accepted';
  useEffect(() => {
    if (!accepted) return;
    window.scrollTo(0, 0);
    line.current?.focus({ preventScroll: true });
  }, [accepted]);
  if (!accepted) return null;
  return (
    <p ref={line} tabIndex={-1} role="status" className="notice row accepted">
      {words.plan.accepted}{' '}
      <PageLink to={to('')} className="button">
        {words.plan.toBuild}
      </PageLink>
    </p>
  );
}
