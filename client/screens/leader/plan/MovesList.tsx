import { crewLabel, taskLabel } from '#domain/progress/words.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { PageLink } from '../../../parts/PageLink.tsx';
import { atMinute, clock, iso, minutes } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { useLeader } from '../useLeader.ts';
import { crewChanges, type Move, movesOf } from './moves.ts';

/** Read at a look; the rest opens. */
const shown = 6;

/** Which tasks another plan moves, the largest move first. */
export function MovesList({ before, after }: { readonly before: Plan; readonly after: Plan }) {
  const { state } = useBuild();
  const texts = words.plan;
  const hasBegun = (task: string): boolean =>
    (state.tasks[task]?.status ?? 'to-come') !== 'to-come';
  const moves = movesOf(before, after, hasBegun);
  return (
    <section className="stack" aria-label={texts.moves}>
      <h4>{texts.moves}</h4>
      {moves.length === 0 ? <p>{texts.movesNone}</p> : null}
      <Moves moves={moves.slice(0, shown)} />
      {moves.length > shown ? (
        <details className="quiet">
          <summary>{texts.moveMore(moves.length - shown)}</summary>
          <Moves moves={moves.slice(shown)} />
        </details>
      ) : null}
    </section>
  );
}

function Moves({ moves }: { readonly moves: readonly Move[] }) {
  const { state } = useBuild();
  const { toTask } = useLeader();
  return (
    <ul className="moves">
      {moves.map((move) => (
        <li key={move.task}>
          <PageLink to={toTask(move.task)}>{taskLabel(state, move.task)}</PageLink>{' '}
          <span className="second">
            <MoveWords move={move} />
          </span>
        </li>
      ))}
    </ul>
  );
}

function MoveWords({ move }: { readonly move: Move }) {
  const { state, now } = useBuild();
  const texts = words.plan;
  const { before, after, shift } = move;
  const at = (minute: number): string => clock(atMinute(state.start, minute), state.zone, iso(now));
  if (!before) return texts.moveNew(at(after.start));
  const by = shift < 0 ? texts.moveEarlier(minutes(-shift)) : texts.moveLater(minutes(shift));
  const moved = Math.abs(shift) < 1 ? [] : [texts.moveTo(by, at(after.start), at(before.start))];
  const given = crewChanges(before, after).map(({ crew, was, is }) =>
    texts.moveCrew(crewLabel(state, crew), is, was),
  );
  return [...moved, ...given].join('; ');
}
