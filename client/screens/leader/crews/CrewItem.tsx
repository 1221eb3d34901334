import type { Crew } from '#domain/tasks/work.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { crewStrength } from '../../../parts/crewStrength.ts';
import type { Say } from '../../../parts/useSay.ts';
import { atMinute, clock, iso } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { CrewForm } from './CrewForm.tsx';
import { CrewTells } from './CrewTells.tsx';

type Props = { readonly crew: Crew; readonly say: Say['say']; readonly busy: boolean };

/** One crew: its strength now, who leads it, when it is there; opened, what can be told and changed. */
export function CrewItem({ crew, say, busy }: Props) {
  const { state, now } = useBuild();
  const standing = state.crews[crew.id];
  const texts = words.crews;
  const time = (minute: number): string =>
    clock(atMinute(state.start, minute), state.zone, iso(now));
  const { from, to } = crew;
  const hours =
    from !== undefined && to !== undefined
      ? texts.hours(time(from), time(to))
      : from !== undefined
        ? texts.from(time(from))
        : to !== undefined
          ? texts.to(time(to))
          : '';
  const facts = [
    crew.chief ? texts.chief(crew.chief) : texts.noChief,
    hours,
    crew.attached ? texts.attached : '',
    standing?.toldAt ? texts.told(clock(standing.toldAt, state.zone)) : '',
  ].filter(Boolean);
  const { fit, planned } = crewStrength(state, crew);
  return (
    <li>
      <details>
        <summary>
          <strong>{crew.name}</strong>{' '}
          <span className={fit < planned ? 'warn' : ''}>{texts.strength(fit, planned)}</span>
          {standing && standing.hurt > 0 ? (
            <span className="warn">, {texts.hurt(standing.hurt)}</span>
          ) : null}
          <span className="second item-facts">{facts.join(', ')}</span>
        </summary>
        <div className="item-body">
          <CrewTells crew={crew} say={say} busy={busy} />
          <CrewForm crew={crew} />
        </div>
      </details>
    </li>
  );
}
