import { useMemo, useRef, useState } from 'react';
import type { BuildState } from '#domain/progress/state.ts';
import { courseNow } from '#domain/progress/views/courseNow.ts';
import { Button } from '../parts/Button.tsx';
import { HoldMark } from '../parts/HoldMark.tsx';
import { atMinute, clock, iso, minuteOf, people as peopleWords, zoneName } from '../words/units.ts';
import { words } from '../words/words.ts';
import { ColumnBox } from './ColumnBox.tsx';
import { ColumnRests } from './ColumnRests.tsx';
import { ticksEvery } from './clockTicks.ts';
import { type Band, type Box, type HoldLine, layColumns } from './columnsLayout.ts';
import { useWidth } from './useWidth.ts';
import './columns.css';

type Props = {
  readonly state: BuildState;
  /** Server-corrected milliseconds. */
  readonly now: number;
  /** ISO 8601 UTC: from then on it is dark; null where it is not known or does not matter. */
  readonly dusk: string | null;
  /** Called with a task's id when it is touched. */
  readonly onTask: (task: string) => void;
};

/** Narrower than this, one column with a chooser. */
const oneColumn = 720;

/** Pixels left and right of the columns, for times and holds: as the style sheet has them. */
const sides = { desk: 232, phone: 132 };

/** Crews side by side, time running down to scale. Empty paper in a column is people waiting. */
export function CrewColumns({ state, now, dusk, onTask }: Props) {
  const [box, width] = useWidth<HTMLElement>(1200);
  const minute = Math.floor(now / 15_000) * 15_000;
  const course = useMemo(() => courseNow(state, iso(minute)), [state, minute]);
  const layout = useMemo(() => (course ? layColumns(state, course) : null), [state, course]);
  const nowLine = useRef<HTMLDivElement>(null);
  const [chosen, setChosen] = useState<string | null>(null);
  const said = words.columns;
  if (!layout) return <p className="notice">{said.noPlan}</p>;

  const scale = minuteHeight(layout.columns.flatMap(({ boxes }) => boxes));
  const y = (at: number): number => (at - layout.from) * scale;
  const time = (at: number): string => clock(atMinute(state.start, at), state.zone);
  const nameOf = (crew: string): string =>
    state.work.crews.find(({ id }) => id === crew)?.name ?? crew;
  const restsOf = (crew: string) =>
    (state.work.crews.find(({ id }) => id === crew)?.rests ?? []).filter(
      ({ from, to }) => from >= layout.from && to <= layout.to,
    );
  const narrow = width < oneColumn;
  const first = layout.columns[0]?.crew ?? '';
  const one = chosen ?? first;
  const shown = narrow ? layout.columns.filter(({ crew }) => crew === one) : layout.columns;
  // Attached people have few jobs of their own: a narrower column shows them.
  const attached = new Set(state.work.crews.flatMap((crew) => (crew.attached ? [crew.id] : [])));
  const shares = shown.map(({ crew }) => (attached.has(crew) && !narrow ? 2 : 3));
  const field = Math.max(0, width - (narrow ? sides.phone : sides.desk));
  const covers = [
    ...layout.bands.map(({ start, finish }) => ({
      top: y(start),
      bottom: y(start) + bandHeight(y(start), y(finish)),
    })),
    ...layout.holds.map(({ at }) => ({ top: y(at), bottom: y(at) + 4 })),
  ];
  const nowAt = minuteOf(state.start, now);
  const nowShown = nowAt >= layout.from && nowAt <= layout.to;
  const duskAt = dusk === null ? null : minuteOf(state.start, dusk);
  const ticks = ticksEvery(Date.parse(state.start), layout.from, layout.to, 10);

  return (
    <section ref={box} className="columns" aria-label={said.title}>
      <div className="columns-tools no-print">
        {narrow ? (
          <label className="field columns-chooser">
            <span className="label">{said.crew}</span>
            <select value={one} onChange={(event) => setChosen(event.target.value)}>
              {layout.columns.map(({ crew }) => (
                <option key={crew} value={crew}>
                  {nameOf(crew)}
                </option>
              ))}
            </select>
          </label>
        ) : null}
        {nowShown ? (
          <Button
            onClick={() => {
              nowLine.current?.scrollIntoView({ block: 'center' });
            }}
          >
            {said.toNow}
          </Button>
        ) : null}
        <p className="second small">{said.legend(zoneName(now, state.zone))}</p>
      </div>
      <div
        className="columns-heads"
        style={{ gridTemplateColumns: shares.join('fr ').concat('fr') }}
      >
        {shown.map(({ crew }, index) => (
          <div key={crew} className={shares[index] === 3 ? 'columns-head' : 'columns-head slim'}>
            <h3>{nameOf(crew)}</h3>
            <p className="second small">{peopleWords(state.crews[crew]?.fit ?? 0)}</p>
          </div>
        ))}
      </div>
      <div className="columns-field" style={{ height: y(layout.to) + 24 }}>
        {duskAt !== null && duskAt < layout.to ? (
          <div
            className="columns-dusk"
            style={{ top: Math.max(0, y(duskAt)), height: y(layout.to) - Math.max(0, y(duskAt)) }}
          >
            <span className="second small">{said.dusk(time(duskAt))}</span>
          </div>
        ) : null}
        {ticks.map((tick) => (
          <div key={tick} className="columns-tick" style={{ top: y(tick) }} aria-hidden="true">
            {duskAt !== null && Math.abs(Math.max(0, y(duskAt)) - y(tick)) < 20 ? null : (
              <span className={time(tick).endsWith(':00') ? 'hour' : ''}>{time(tick)}</span>
            )}
          </div>
        ))}
        {shown.map(({ crew, boxes }, index) => (
          <ol
            key={crew}
            className="columns-crew"
            style={{
              left: `${(100 * sum(shares.slice(0, index))) / sum(shares)}%`,
              width: `${(100 * (shares[index] ?? 1)) / sum(shares)}%`,
            }}
            aria-label={nameOf(crew)}
          >
            <ColumnRests rests={restsOf(crew)} y={y} time={time} />
            {boxes.map((each) => (
              <ColumnBox
                key={each.task}
                box={each}
                top={y(each.start)}
                height={Math.max(3, y(each.finish) - y(each.start) - 1)}
                width={(field * (shares[index] ?? 1)) / sum(shares)}
                covers={covers}
                time={time}
                onTask={onTask}
              />
            ))}
          </ol>
        ))}
        <ol aria-label={said.bands}>
          {layout.bands.map((band) => (
            <BandBox
              key={band.task}
              band={band}
              top={y(band.start)}
              height={bandHeight(y(band.start), y(band.finish))}
              own={band.own
                .map(({ crew, people }) => said.ownPeople(nameOf(crew), people))
                .join(' · ')}
              time={time}
              onTask={onTask}
            />
          ))}
        </ol>
        <ol aria-label={said.holds}>
          {spread(layout.holds, y).map(({ hold, top, labelTop }) => (
            <li key={hold.task}>
              <div className="columns-hold" style={{ top }} />
              <button
                type="button"
                className="columns-hold-label"
                style={{ top: labelTop }}
                onClick={() => onTask(hold.task)}
              >
                <HoldMark hold={hold.state} />
                <span className="hold-name">{hold.name}</span>
                <span className="second">{time(hold.at)}</span>
              </button>
            </li>
          ))}
        </ol>
        {nowShown ? (
          <div ref={nowLine} className="columns-now" style={{ top: y(nowAt) }}>
            <span>{said.now(time(nowAt))}</span>
          </div>
        ) : null}
      </div>
    </section>
  );
}

type BandProps = {
  readonly band: Band;
  readonly own: string;
  readonly top: number;
  readonly height: number;
  readonly time: (minute: number) => string;
  readonly onTask: (task: string) => void;
};

function BandBox({ band, own, top, height, time, onTask }: BandProps) {
  const said = words.columns;
  return (
    <li className={`column-band is-${band.status}`} style={{ top, height }}>
      <button type="button" onClick={() => onTask(band.task)}>
        <span className="name">{said.band(band.name)}</span>
        <span className="side own">{own}</span>
        <span className="out-of-sight">
          {said.box(words.status[band.status], time(band.start), time(band.finish))}
        </span>
      </button>
    </li>
  );
}

/** High enough for a line of text. Pixels. */
function bandHeight(top: number, bottom: number): number {
  return Math.max(22, bottom - top - 1);
}

/** Tall enough that half of the boxes hold a line of text, within reason. Pixels per minute. */
function minuteHeight(boxes: readonly Box[]): number {
  const lengths = boxes.map(({ start, finish }) => finish - start).sort((a, b) => a - b);
  const quarter = lengths[Math.floor(lengths.length / 4)] ?? 4;
  return Math.min(9, Math.max(3, 20 / Math.max(quarter, 0.5)));
}

/** Labels of holds that lie close together are moved apart, never over each other. */
function spread(
  holds: readonly HoldLine[],
  y: (minute: number) => number,
): { hold: HoldLine; top: number; labelTop: number }[] {
  let last = Number.NEGATIVE_INFINITY;
  return holds.map((hold) => {
    const top = y(hold.at);
    last = Math.max(top, last + 26);
    return { hold, top, labelTop: last };
  });
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, each) => total + each, 0);
}
