import { crewLabel, taskLabel } from '#domain/progress/words.ts';
import type { Plan, PlannedTask } from '#domain/schedule/plan.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { PageLink } from '../../../parts/PageLink.tsx';
import { atMinute, clock, iso, minutes } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { useLeader } from '../useLeader.ts';
import { type Move, movesOf } from './moves.ts';

const shown = 12;

/** Which tasks another plan moves, the largest move first. */
export function MovesList({ before, after }: { readonly before: Plan; readonly after: Plan }) {
  const { state } = useBuild();
  const { toTask } = useLeader();
  const texts = words.plan;
  const hasBegun = (task: string): boolean =>
    (state.tasks[task]?.status ?? 'to-come') !== 'to-come';
  const moves = movesOf(before, after, hasBegun);
  return (
    <section className="stack" aria-label={texts.moves}>
      <h4>{texts.moves}</h4>
      {moves.length === 0 ? <p>{texts.movesNone}</p> : null}
      <ul className="moves">
        {moves.slice(0, shown).map((move) => (
          <li key={move.task}>
            <PageLink to={toTask(move.task)}>{taskLabel(state, move.task)}</PageLink>{' '}
            <span className="second">
              <MoveWords move={move} />
            </span>
          </li>
        ))}
        {moves.length > shown ? <li>{texts.moveMore(moves.length - shown)}</li> : null}
      </ul>
    </section>
  );
}

function MoveWords({ move }: { readonly move: Move }) {
  const { state, now } = useBuild();
  const texts = words.plan;
  const { before, after, shift } = move;
  const at = (minute: number): string => clock(atMinute(state.start, minute), state.zone, iso(now));
  const crews = ({ crews: some }: PlannedTask): string =>
    some.map(({ crew, people }) => `${crewLabel(state, crew)} ${people}`).join(', ');
  if (!before) return texts.moveNew(at(after.start));
  const moved =
    Math.abs(shift) < 1
      ? []
      : [
          shift < 0 ? texts.moveEarlier(minutes(-shift)) : texts.moveLater(minutes(shift)),
          texts.moveTo(at(before.start), at(after.start)),
        ];
  const given = crews(before) === crews(after) ? [] : [texts.moveCrew(crews(before), crews(after))];
  return [...moved, ...given].join(', ');
}
