import { isUnsent } from '../data/sender.ts';
import { useBuild } from '../data/useBuild.ts';
import { useNow } from '../data/useNow.ts';
import { clock, dateTimeGroup, zoneName } from '../words/units.ts';
import { words } from '../words/words.ts';
import { HaltButton } from './HaltButton.tsx';
import { LineState } from './LineState.tsx';
import { ThemeSwitch } from './ThemeSwitch.tsx';

/** The head of a working page: which build, whose page, the time at the site, how fresh it is, and the halt. */
export function BuildHead({ page }: { readonly page: string }) {
  const { state, linkKey, skew, sendings } = useBuild();
  const now = useNow(1000, skew);
  const unsent = sendings.filter(isUnsent).length;
  return (
    <div className="build-head">
      <div className="build-head-name">
        <p>
          <strong>{state.name}</strong> · {page} · {words.allTimes(zoneName(now, state.zone))}
        </p>
        <p>
          <strong className="build-head-clock">{clock(now, state.zone)}</strong>{' '}
          <span className="second">{dateTimeGroup(now, state.zone)}</span>
        </p>
      </div>
      <div className="build-head-line">
        <LineState />
        {unsent > 0 ? (
          <p className="warn" role="status">
            {words.sending.unsent(unsent)}
          </p>
        ) : null}
        <ThemeSwitch linkKey={linkKey} />
      </div>
      <HaltButton />
    </div>
  );
}
