import { type HoldNow, holdsOf } from '#domain/progress/views/holds.ts';
import { useBuild } from '../../data/useBuild.ts';
import { HoldMark } from '../../parts/HoldMark.tsx';
import { clock } from '../../words/units.ts';
import { words } from '../../words/words.ts';

const shownPassed = 2;
const shownOpen = 5;

/** The hold points: the last passed, whatever failed or lapsed, and those to come. */
export function HoldPoints() {
  const { state } = useBuild();
  const said = words.commander.points;
  const holds = holdsOf(state);
  const passed = holds.filter(({ status }) => status === 'passed');
  const open = holds.filter(({ status }) => status !== 'passed');
  const older = passed.length - shownPassed;
  const at = (hold: HoldNow): string => (hold.at ? clock(hold.at, state.zone) : '');
  return (
    <section className="stack">
      <h2>{said.title}</h2>
      {holds.length === 0 ? <p>{said.none}</p> : null}
      <ul className="hold-list">
        {older > 0 ? (
          <li>
            <HoldMark hold="passed" />
            <span>{said.before(older)}</span>
          </li>
        ) : null}
        {passed.slice(-shownPassed).map((hold) => (
          <li key={hold.task}>
            <HoldMark hold="passed" />
            <span>
              {hold.name}
              {hold.ownWork ? <span className="second"> ({said.ownWork})</span> : null}
              {hold.concession ? (
                <strong className="warn">
                  {' '}
                  ({said.concession(hold.concession.name, hold.concession.authority)})
                </strong>
              ) : null}
            </span>
            <span className="second">{at(hold)}</span>
          </li>
        ))}
        {open.slice(0, shownOpen).map((hold, index) => (
          <li key={hold.task}>
            <HoldMark hold={hold.status} />
            <span>{hold.name}</span>
            <span className={hold.status === 'open' ? 'second' : 'warn'}>
              {hold.status === 'open'
                ? index === 0
                  ? said.next
                  : ''
                : `${words.hold[hold.status]} ${at(hold)}`}
            </span>
          </li>
        ))}
      </ul>
      {open.length > shownOpen ? (
        <p className="second">{said.more(open.length - shownOpen)}</p>
      ) : null}
    </section>
  );
}
