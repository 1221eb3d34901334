import { useBuild } from '../data/useBuild.ts';
import type { Fetched } from '../data/useFetched.ts';
import { useNow } from '../data/useNow.ts';
import { span } from '../words/units.ts';
import { words } from '../words/words.ts';

/** How something fetched stands where it is not simply there: under way, old, refused. Nothing when all is well. */
export function FetchState({ fetched }: { readonly fetched: Fetched<unknown> }) {
  const { skew } = useBuild();
  const now = useNow(5000, skew) - skew;
  const { value, since, trouble } = fetched;
  if (trouble === 'none') {
    return value === null ? (
      <p className="second" aria-busy="true">
        {words.said.fetching}
      </p>
    ) : null;
  }
  if (trouble !== 'unreachable') {
    return <p className="warn">{words.said.refused(trouble.sentence)}</p>;
  }
  return (
    <p className="warn">
      {value === null ? words.said.noFetch : words.said.oldFetch(span(now - since))}
    </p>
  );
}
