import { useBuild } from '../../data/useBuild.ts';
import { clock, dateTimeGroup } from '../../words/units.ts';
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
  const { state, now } = useBuild();
  const { meant, sentence, at, warning } = reading;
  const by = speaker || reading.by;
  return (
    <>
      <strong>{sentence}</strong>{' '}
      {meant ? (
        <span className="second">
          {by ? `${words.log.said(by)}, ` : ''}
          {at === null ? words.log.nowTime : whenSaid(at, now, state.zone)}
        </span>
      ) : (
        <span className="warn">{words.log.cannot}</span>
      )}
      {warning ? <span className="reading-warning warn">{warning}</span> : null}
    </>
  );
}

/** A time of day, with the day where it is not today's at the site. */
function whenSaid(at: number, now: number, zone: string): string {
  const day = (moment: number): string => dateTimeGroup(moment, zone).slice(0, 2);
  const time = clock(at, zone);
  return day(at) === day(now) ? words.log.at(time) : words.log.yesterday(time);
}
