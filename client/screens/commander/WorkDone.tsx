import { lightSentence } from '#domain/brief/light.ts';
import { percentComplete } from '#domain/progress/views/percent.ts';
import { spanOf } from '#domain/progress/views/span.ts';
import { strengthOf } from '#domain/progress/views/strength.ts';
import { useBuild } from '../../data/useBuild.ts';
import { vehiclesOf } from '../../words/loadClass.ts';
import { clock, iso, metres, percent } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { closed } from './closed.ts';

/** What can be counted from the bank first, then shares, people, light, and what may cross in plain words. */
export function WorkDone() {
  const { state, now } = useBuild();
  const said = words.commander;
  const { share } = percentComplete(state);
  const { fit, planned, hurt } = strengthOf(state);
  const { bridge, ground, zone } = state;
  return (
    <section className="stack">
      <h2>{counted(state)}</h2>
      <svg className="bar" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
        <rect className="bar-whole" x="0" y="0" width="100" height="6" />
        <rect className="bar-done" x="0" y="0" width={100 * share} height="6" />
      </svg>
      <p>{said.work.share(percent(share))}</p>
      <p>
        {said.work.strength(fit, planned)}
        {hurt > 0 ? ` · ${said.work.hurt(hurt)}` : ''}
      </p>
      {ground?.place ? <p>{lightSentence(ground.place, iso(now), zone)}</p> : null}
      {bridge ? (
        <p>
          <strong>{said.loadClass.title(bridge.loadClass)}.</strong> {said.loadClass.rule}{' '}
          <span className="second">{said.loadClass.asGuide(vehiclesOf(bridge.loadClass))}</span>
        </p>
      ) : null}
      <SafetyEvents />
    </section>
  );
}

function counted(state: ReturnType<typeof useBuild>['state']): string {
  const said = words.commander.work;
  if (!state.bridge) {
    const done = state.work.tasks.filter(({ id }) => state.tasks[id]?.status === 'done').length;
    return said.tasks(done, state.work.tasks.length);
  }
  const span = spanOf(state);
  const built = span.bays.filter(({ whole }) => whole === 'done').length;
  const bays = said.bays(built, span.bays.length);
  if (span.toMove === 0) return bays;
  return `${bays}, ${said.moved(metres(span.moved), metres(span.toMove))}`;
}

const shown = 3;

function SafetyEvents() {
  const { state } = useBuild();
  const said = words.commander.events;
  const events = state.events.filter(({ kind }) => kind !== 'short' && kind !== 'reopened');
  return (
    <>
      <h3>{said.title}</h3>
      {events.length === 0 ? <p className="second">{said.none}</p> : null}
      <ul className="stack">
        {events
          .slice(-shown)
          .reverse()
          .map((event) => (
            <li key={`${event.entry} ${event.sentence}`}>
              <span className="second">{clock(event.at, state.zone)}</span> {closed(event.sentence)}
              {/* Several calls can belong to the halt that stands: nothing is called lifted before all is. */}
              {event.kind === 'halt' && state.halt === null ? ` ${said.lifted}` : null}
            </li>
          ))}
      </ul>
      {events.length > shown ? <p className="second">{said.more(events.length - shown)}</p> : null}
    </>
  );
}
