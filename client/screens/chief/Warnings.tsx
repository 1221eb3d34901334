import { useBuild } from '../../data/useBuild.ts';
import { Button } from '../../parts/Button.tsx';
import { entrySentence } from '../../words/entryWords.ts';
import { clock } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { useCard } from './card.ts';

/** A breach stays in sight this long. */
const shownFor = 30 * 60_000;

/** Refused tells until they are seen, and breaches that concern this crew. */
export function Warnings() {
  const { sendings, dismiss } = useBuild();
  const { state, crew, now } = useCard();
  const said = words.chief.last;
  const refused = sendings.filter(({ state: how }) => how === 'refused' || how === 'no-answer');
  const breaches = state.events.filter(
    (event) =>
      event.kind === 'breach' &&
      event.crew === crew &&
      !event.withdrawn &&
      now - Date.parse(event.at) < shownFor,
  );
  // One report may break several rules: it is one breach to the one who told it.
  const entries = [...new Set(breaches.map(({ entry }) => entry))];
  const byEntry = entries.map((entry) => breaches.filter((event) => event.entry === entry));
  return (
    <div role="alert">
      {refused.map((one) => (
        <section key={one.id} className="notice strong stack">
          <h2>{one.state === 'refused' ? words.chief.keepOff.refused : words.sending.noAnswer}</h2>
          <p>
            {entrySentence(state, one)}.{' '}
            {one.receipt?.outcome === 'refused' ? one.receipt.sentence : ''}
          </p>
          <Button onClick={() => dismiss(one.id)}>{said.seen}</Button>
        </section>
      ))}
      {byEntry.map(([first, ...more]) => (
        <section key={first?.entry} className="notice strong stack">
          <h2>{said.breach}</h2>
          <p>
            {first ? `${clock(first.at, state.zone)} ${first.sentence}` : ''}
            {more.map(({ sentence }) => ` ${sentence}`)}
          </p>
        </section>
      ))}
    </div>
  );
}
