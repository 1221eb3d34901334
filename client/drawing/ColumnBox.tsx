import { people as peopleWords } from '../words/units.ts';
import { words } from '../words/words.ts';
import { boxText, type Cover, lineHeight } from './boxText.ts';
import type { Box } from './columnsLayout.ts';

type Props = {
  readonly box: Box;
  /** Pixels on the board. */
  readonly top: number;
  readonly height: number;
  /** Pixels of the whole column. */
  readonly width: number;
  /** Bands and hold lines that lie over the columns. */
  readonly covers: readonly Cover[];
  readonly time: (minute: number) => string;
  readonly onTask: (task: string) => void;
};

/** One task in one crew's column: as high as its minutes, named where nothing lies over it. */
export function ColumnBox({ box, top, height, width, covers, time, onTask }: Props) {
  const said = words.columns;
  const place = { top, height, width: width / box.lanes };
  const { text, offset, lines, small, people } = boxText(box, place, covers);
  const classes = ['column-box', `is-${box.status}`, box.critical ? 'critical' : ''];
  if (small) classes.push('slim');
  return (
    <li
      className={classes.join(' ')}
      style={{
        top,
        height,
        left: `${(100 * box.lane) / box.lanes}%`,
        width: `${100 / box.lanes}%`,
      }}
    >
      <button type="button" style={{ paddingTop: offset }} onClick={() => onTask(box.task)}>
        {lines > 0 ? (
          <span
            className="text"
            aria-hidden="true"
            style={small ? {} : { maxHeight: lines * lineHeight }}
          >
            {people ? <span className="people">{box.people}</span> : null}
            <span className="name">{text}</span>
          </span>
        ) : null}
        <span className="out-of-sight">
          {box.name} ({box.number}), {peopleWords(box.people)},{' '}
          {said.box(words.status[box.status], time(box.start), time(box.finish))}
          {box.critical ? ` ${said.critical}` : ''}
        </span>
      </button>
    </li>
  );
}
