import { useMemo } from 'react';
import type { Stopped } from '#domain/bridge/statics/heldNow.ts';
import { type PullBack, pullBack } from '#domain/bridge/statics/pullBack.ts';
import type { Launching } from '../../../drawing/launchMoment.ts';
import { bayWords } from '../../../drawing/launchText.ts';
import { listed, numbersShort } from '../../../words/lists.ts';
import { metres, tonnes } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';

type Props = { readonly launching: Launching; readonly stopped: Stopped };

/** The moves back to the near bank in order, each with its margin and what comes off before the next. */
export function PullBackList({ launching, stopped }: Props) {
  const { bridge, kit } = launching;
  const moves = useMemo(() => pullBack(bridge, kit, stopped), [bridge, kit, stopped]);
  const said = words.launch.stopped;
  if (moves.length === 0) return <p>{said.backNone}</p>;
  return (
    <section className="stack">
      <h2>{said.back}</h2>
      <p className="second reading">{said.backMore}</p>
      <ol className="pull-back">
        {moves.map((move) => (
          <li key={move.stage}>
            {before(move).map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
            <p>
              <strong>{said.backMove(move.stage, metres(move.metres))}</strong>,{' '}
              {said.backMargin(metres(move.margin))}.
            </p>
            {after(move) ? <p>{said.afterIt(after(move))}</p> : null}
          </li>
        ))}
      </ol>
    </section>
  );
}

function before({ noseOn, counterweight }: PullBack): string[] {
  const said = words.launch.stopped;
  const sections = numbersShort(noseOn);
  return [
    ...(noseOn.length > 0
      ? [said.noseOn(noseOn.length === 1 ? said.section(sections) : said.sections(sections))]
      : []),
    ...(counterweight > 0 ? [said.weights(tonnes(counterweight))] : []),
  ];
}

function after({ decksOff, baysOff }: PullBack): string {
  const said = words.launch.stopped;
  return listed([
    ...(decksOff.length > 0 ? [said.decksOff(bayWords(decksOff))] : []),
    ...(baysOff.length > 0 ? [said.baysOff(bayWords(baysOff))] : []),
  ]);
}
