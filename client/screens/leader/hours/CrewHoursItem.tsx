import type { Crew, Work } from '#domain/tasks/work.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { StrengthLine } from '../../../drawing/StrengthLine.tsx';
import type { Stretch } from '../../../drawing/strengthProfile.ts';
import { minuteOf, people, upperFirst } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { lentWords, restsWords, strengthWords, timeOf } from '../draft/crewWords.ts';
import { HoursForm } from './HoursForm.tsx';
import type { Short } from './shortOf.ts';

type Props = {
  readonly before: Crew;
  readonly crew: Crew;
  readonly work: Work;
  readonly stretches: readonly Stretch[];
  readonly most: number;
  readonly short: Short | undefined;
};

/** One crew: how many of it are there when, drawn and in words; opened, to be changed. */
export function CrewHoursItem({ before, crew, work, stretches, most, short }: Props) {
  const { state, now } = useBuild();
  const texts = words.hours;
  const said = words.leader.change;
  const standing = state.crews[crew.id];
  const borrowed = work.crews.flatMap(({ name, lent = [] }) =>
    lent
      .filter((one) => one.crew === crew.id)
      .map(({ people: some, from, to }) => {
        const begins = timeOf(state, from);
        const time = to === undefined ? said.onward(begins) : said.spell(begins, timeOf(state, to));
        return texts.borrows(texts.has(people(some), name, time));
      }),
  );
  const window = [
    crew.from === undefined ? '' : said.crewFrom(timeOf(state, crew.from)),
    crew.to === undefined ? '' : said.crewTo(timeOf(state, crew.to)),
  ].filter(Boolean);
  const later = strengthWords(state, crew);
  const facts = [
    window.join(', ') || texts.always,
    restsWords(state, crew) || texts.noRests,
    [lentWords(state, crew), ...borrowed].filter(Boolean).join(', ') || texts.noneLent,
    later === '' ? texts.steady : texts.strengthThen(later),
  ];
  return (
    <li className="stack hours-crew">
      <h2>
        {crew.name}, {people(crew.people)}
      </h2>
      {short ? (
        <p className="warn">{texts.short(people(short.missing), timeOf(state, short.at))}</p>
      ) : null}
      <p>{facts.map((fact) => `${upperFirst(fact)}.`).join(' ')}</p>
      {standing && standing.fit !== standing.planned.people ? (
        <p>{texts.told(standing.fit, standing.planned.people)}</p>
      ) : null}
      <StrengthLine
        crew={crew.name}
        stretches={stretches}
        most={most}
        now={minuteOf(state.start, now)}
        start={state.start}
        zone={state.zone}
      />
      <details>
        <summary aria-label={texts.changeOf(crew.name)}>{texts.change}</summary>
        <HoursForm key={state.planCount} before={before} crew={crew} work={work} />
      </details>
    </li>
  );
}
