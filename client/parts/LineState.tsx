import { useBuild } from '../data/useBuild.ts';
import { useNow } from '../data/useNow.ts';
import { span } from '../words/units.ts';
import { words } from '../words/words.ts';

/** Older than this, a page says so loudly: a beat should have come. */
const staleAfter = 40_000;

/** How fresh the page is. Loud when the line is lost, quiet otherwise. */
export function LineState() {
  const { heardAt, skew, online } = useBuild();
  // Only this line needs a second hand: the rest of the page moves every few seconds.
  const now = useNow(1000, skew);
  if (heardAt === null) return <p className="warn">{words.line.never}</p>;
  const since = now - heardAt;
  return online && since < staleAfter ? (
    <p className="second">{words.line.heard(span(since))}</p>
  ) : (
    <p className="warn" role="status">
      {words.line.lost(span(Math.floor(since / 10_000) * 10_000))}
    </p>
  );
}
