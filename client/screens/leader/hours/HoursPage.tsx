import { useMemo } from 'react';
import { useBuild } from '../../../data/useBuild.ts';
import { strengthProfile } from '../../../drawing/strengthProfile.ts';
import { PageLink } from '../../../parts/PageLink.tsx';
import { words } from '../../../words/words.ts';
import { useDraft } from '../draft/DraftContext.ts';
import { useLeader } from '../useLeader.ts';
import { CrewHoursItem } from './CrewHoursItem.tsx';
import { crewBefore, lastMinute, withHours, workTried } from './crewHours.ts';
import { shortOf } from './shortOf.ts';
import './hours.css';

/** Who is there when, crew by crew: hours, rests, people lent, strength later; to be changed for the plan. */
export function HoursPage() {
  const { state } = useBuild();
  const { changes } = useDraft();
  const { to } = useLeader();
  const texts = words.hours;
  const work = useMemo(() => workTried(state, changes), [state, changes]);
  const end = lastMinute(work, state.plan?.minutesToOpen ?? 0);
  const profiles = work.crews.map((_, row) => strengthProfile(work, row, 0, end));
  const most = Math.max(0, ...profiles.flat().map(({ people }) => people));
  const short = shortOf(work);
  return (
    <>
      <h1>{texts.title}</h1>
      <p className="reading">
        {texts.lead} {texts.tellElsewhere}
      </p>
      <p>
        <PageLink to={to('crews')} className="button">
          {texts.toCrews}
        </PageLink>
      </p>
      {work.crews.length === 0 ? <p className="lead">{texts.none}</p> : null}
      <ul className="hours-crews" aria-label={texts.crews}>
        {work.crews.map((crew, row) => {
          const before = crewBefore(state, changes, crew.id) ?? crew;
          return (
            <CrewHoursItem
              key={crew.id}
              before={before}
              crew={withHours(before, changes)}
              work={work}
              stretches={profiles[row]!}
              most={most}
              short={short.find((one) => one.crew.id === crew.id)}
            />
          );
        })}
      </ul>
    </>
  );
}
