import { PageLink } from '../../../parts/PageLink.tsx';
import { words } from '../../../words/words.ts';
import { useLeader } from '../useLeader.ts';
import { useDraft } from './DraftContext.ts';

/** Says on every page of the leader that changes are waiting to be planned. */
export function DraftBar() {
  const { changes } = useDraft();
  const { section, to } = useLeader();
  if (changes.length === 0 || section === 'plan') return null;
  return (
    <p className="notice row draft-bar">
      {words.leader.draft.count(changes.length)}{' '}
      <PageLink to={to('plan')} className="button">
        {words.leader.draft.look}
      </PageLink>
    </p>
  );
}
