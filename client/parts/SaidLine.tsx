import { useBuild } from '../data/useBuild.ts';
import { words } from '../words/words.ts';
import { FaultList } from './FaultList.tsx';
import type { Said } from './useSay.ts';

/** Says what became of a report, in words and aloud. It always stands, empty, so that screen readers follow it. */
export function SaidLine({
  said,
  className,
}: {
  readonly said: Said | null;
  readonly className?: string;
}) {
  return (
    <div role="status" className={className ? `said ${className}` : 'said'}>
      {said ? <What said={said} /> : null}
    </div>
  );
}

function What({ said }: { readonly said: Said }) {
  const { sendings } = useBuild();
  switch (said.state) {
    case 'sending':
      return sendings.some(({ state }) => state === 'waiting') ? (
        <p className="warn">{words.said.waiting}</p>
      ) : (
        <p>{words.said.sending}</p>
      );
    case 'recorded':
      return (
        <>
          <p>{words.said.recorded(said.entry)}</p>
          {said.breaches.map((breach) => (
            <p key={breach.sentence} className="warn">
              {words.said.breach(breach.sentence)}
            </p>
          ))}
        </>
      );
    case 'refused':
      return (
        <>
          <p className="warn">{words.said.refused(said.sentence)}</p>
          <FaultList faults={said.faults} />
        </>
      );
    case 'no-answer':
      return <p className="warn">{words.said.noAnswer}</p>;
  }
}
