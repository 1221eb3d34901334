import { Button } from '../../../parts/Button.tsx';
import { words } from '../../../words/words.ts';
import type { Need } from './needs.ts';

/** The heading of the list of needs. */
export const needsId = 'leader-needs';

/** The gravest need under the headline, and the way to all: on a small screen the list stands below the bridge. */
export function NeedsGlance({ needs }: { readonly needs: readonly Need[] }) {
  const [first, ...others] = needs;
  if (!first) return null;
  const said = words.leader;
  return (
    <span className="needs-glance">
      <span className={first.grave ? 'warn' : ''}>{first.sentence}</span>
      <Button
        look="plain"
        onClick={() => {
          const list = document.getElementById(needsId);
          list?.scrollIntoView();
          list?.focus({ preventScroll: true });
        }}
      >
        {others.length === 0 ? said.needsGo : said.needsMore(others.length)}
      </Button>
    </span>
  );
}
