import { useBuild } from '../../data/useBuild.ts';
import { clock } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import type { Reading } from './reading.ts';

/** One way to understand a line: what the record would say, who said it, when. */
export function ReadingLine({
  reading,
  speaker,
}: {
  readonly reading: Reading;
  readonly speaker: string;
}) {
  const { state } = useBuild();
  const { meant, sentence, at, warning } = reading;
  const by = speaker || reading.by;
  return (
    <>
      <strong>{sentence}</strong>{' '}
      {meant ? (
        <span className="second">
          {by ? `${words.log.said(by)}, ` : ''}
          {at === null ? words.log.nowTime : words.log.at(clock(at, state.zone))}
        </span>
      ) : (
        <span className="warn">{words.log.cannot}</span>
      )}
      {warning ? <span className="reading-warning warn">{warning}</span> : null}
    </>
  );
}
