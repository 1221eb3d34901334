import type { Rest } from '#domain/tasks/work.ts';
import { people } from '../words/units.ts';
import { words } from '../words/words.ts';

type Props = {
  readonly rests: readonly Rest[];
  /** Pixels on the board of a minute after the start. */
  readonly y: (minute: number) => number;
  readonly time: (minute: number) => string;
};

/**
 * When a crew rests, all of it or some, behind its tasks: work that goes on over it lies in front, the line stays in
 * sight.
 */
export function ColumnRests({ rests, y, time }: Props) {
  const said = words.columns;
  return rests.map(({ from, to, people: some }) => (
    <li key={from} className="column-rest" style={{ top: y(from), height: y(to) - y(from) }}>
      <span aria-hidden="true">{some === undefined ? said.rest : said.restSome(some)}</span>
      <span className="out-of-sight">
        {some === undefined
          ? said.restAll(time(from), time(to))
          : said.restOf(people(some), time(from), time(to))}
      </span>
    </li>
  ));
}
