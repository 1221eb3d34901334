import type { Load } from '#domain/tasks/work.ts';
import { useBuild } from '../../../data/useBuild.ts';
import type { Say } from '../../../parts/useSay.ts';
import { clock, iso } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { LoadForm } from './LoadForm.tsx';

type Props = { readonly load: Load; readonly say: Say['say']; readonly busy: boolean };

/** One load of stores: whether it is here, late or expected; opened, what can be told and changed. */
export function LoadItem({ load, say, busy }: Props) {
  const { state, now } = useBuild();
  const standing = state.loads[load.id];
  const texts = words.crews;
  const at = (instant: string): string => clock(instant, state.zone, iso(now));
  return (
    <li>
      <details>
        <summary>
          <strong>{load.name}</strong>{' '}
          {standing?.status === 'in' ? <span>{texts.loadIn(at(standing.at))}</span> : null}
          {standing?.status === 'late' ? (
            <span className="warn">{texts.loadLate(at(standing.at), standing.why ?? '')}</span>
          ) : null}
          {standing?.status === 'expected' ? (
            <span>{texts.loadExpected(at(standing.at))}</span>
          ) : null}
          <span className="second item-facts">
            {[
              load.tonnes === undefined ? '' : texts.tonnes(load.tonnes.toFixed(1)),
              standing && standing.status !== 'expected'
                ? texts.loadPlanned(at(standing.planned.at))
                : '',
            ]
              .filter(Boolean)
              .join(', ')}
          </span>
        </summary>
        {standing?.status === 'in' ? null : <LoadForm load={load} say={say} busy={busy} />}
      </details>
    </li>
  );
}
