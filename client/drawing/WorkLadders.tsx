import { useState } from 'react';
import { minutes } from '../words/units.ts';
import { words } from '../words/words.ts';
import { useWidth } from './useWidth.ts';
import { type LadderTask, ladderScale, layLadder, type Rung } from './workLadder.ts';
import './workLadders.css';

/** A crew's ladder: its tasks in the order done. */
export type CrewLadder = {
  readonly crew: string;
  readonly name: string;
  /** Said under the name: the sums, and the pace in words. */
  readonly facts: readonly string[];
  readonly tasks: readonly LadderTask[];
};

type Props = {
  readonly crews: readonly CrewLadder[];
  readonly onTask: (task: string) => void;
};

/** Narrower than this, one ladder with a chooser. */
const oneLadder = 720;
/** The rails and the room for the rungs, as shares of a column. */
const rails = { planned: 0.22, gap: 0.12 };

/** Crews side by side, each with its work as planned and as it went on two rails, and rungs between. */
export function WorkLadders({ crews, onTask }: Props) {
  const [box, width] = useWidth<HTMLElement>(1200);
  const [chosen, setChosen] = useState<string | null>(null);
  const said = words.after.ladder;
  const narrow = width < oneLadder;
  const one = crews.find(({ crew }) => crew === chosen) ?? crews[0];
  const shown = narrow ? crews.filter((crew) => crew === one) : crews;
  const scale = ladderScale(crews.flatMap(({ tasks }) => tasks));
  return (
    <section ref={box} className="ladders" aria-label={said.region}>
      {narrow ? (
        <label className="field no-print">
          <span className="label">{said.crew}</span>
          <select value={one?.crew} onChange={({ target }) => setChosen(target.value)}>
            {crews.map(({ crew, name }) => (
              <option key={crew} value={crew}>
                {name}
              </option>
            ))}
          </select>
        </label>
      ) : null}
      <div className="ladders-board">
        {shown.map((crew) => (
          <Ladder key={crew.crew} crew={crew} scale={scale} onTask={onTask} />
        ))}
      </div>
    </section>
  );
}

type LadderProps = {
  readonly crew: CrewLadder;
  readonly scale: number;
  readonly onTask: (task: string) => void;
};

function Ladder({ crew: { name, facts, tasks }, scale, onTask }: LadderProps) {
  const said = words.after.ladder;
  const rungs = layLadder(tasks, scale);
  const last = rungs.at(-1);
  const height = last
    ? Math.max(last.plannedTop + last.plannedHeight, last.actualTop + last.actualHeight)
    : 0;
  return (
    <section aria-label={name}>
      <h3>{name}</h3>
      {facts.map((fact) => (
        <p key={fact} className="second small">
          {fact}
        </p>
      ))}
      <p className="ladder-rails small" aria-hidden="true">
        <span>{said.planned}</span>
        <span>{said.actual}</span>
      </p>
      <div className="ladder" style={{ height: height + 2 }}>
        <svg
          className="ladder-plan"
          viewBox={`0 0 100 ${height}`}
          preserveAspectRatio="none"
          height={height}
          aria-hidden="true"
        >
          {rungs.map((rung) => (
            <g key={rung.task}>
              <rect
                className="ladder-planned"
                x={0.5}
                y={rung.plannedTop}
                width={100 * rails.planned}
                height={rung.plannedHeight}
              />
              <path className="ladder-rung" d={rungPath(rung)} />
            </g>
          ))}
        </svg>
        <ol>
          {rungs.map((rung) => (
            <li
              key={rung.task}
              className={`ladder-actual ${roomFor(rung.actualHeight)}`}
              style={{
                top: rung.actualTop,
                height: Math.max(3, rung.actualHeight - 1),
                left: `${100 * (rails.planned + rails.gap)}%`,
              }}
            >
              <button type="button" onClick={() => onTask(rung.task)}>
                <span className="name" aria-hidden="true">
                  {/* Left or right is the crew's own side: the number that tells two tasks apart comes before it. */}
                  {rung.name.split(',')[0]}
                </span>
                <span className="out-of-sight">
                  {said.box(rung.name, minutes(rung.planned), minutes(rung.actual))}
                </span>
              </button>
            </li>
          ))}
        </ol>
      </div>
    </section>
  );
}

/** Whether a box holds its name on one line, on several, or not at all. */
function roomFor(height: number): 'slim' | 'line' | 'roomy' {
  if (height < 17) return 'slim';
  return height < 36 ? 'line' : 'roomy';
}

/** From the end of a task on the left rail to its end on the right. */
function rungPath({ plannedTop, plannedHeight, actualTop, actualHeight }: Rung): string {
  const left = 100 * rails.planned + 0.5;
  const right = 100 * (rails.planned + rails.gap);
  return `M${left} ${plannedTop + plannedHeight}L${right} ${actualTop + actualHeight}`;
}
