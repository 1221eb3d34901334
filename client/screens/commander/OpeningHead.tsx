import { useQuery } from '@tanstack/react-query';
import { type ReactNode, useEffect } from 'react';
import { openingHeadline } from '#domain/brief/opening.ts';
import { openedOf } from '#domain/progress/views/opened.ts';
import type { ToldForecasts } from '#shared/wireBuilds.ts';
import { useBuild } from '../../data/useBuild.ts';
import { OpeningStrip } from '../../drawing/OpeningStrip.tsx';
import { iso, unbroken } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { changedWords } from './changed.ts';

/** The answer at the size of a headline, what goes with it in sentences, and the twenty openings that prove it; `more` leads on. */
export function OpeningHead({ more }: { readonly more?: ReactNode }) {
  const { api, build, linkKey, state, forecast, now } = useBuild();
  const told = useQuery({
    queryKey: ['forecasts', linkKey],
    queryFn: () => api.get<ToldForecasts>(`/api/builds/${build}/forecasts`),
  });
  const { refetch } = told;
  const madeOn = forecast?.at;
  useEffect(() => {
    if (madeOn) void refetch();
  }, [madeOn, refetch]);

  const frame = forecast?.forecast ?? null;
  const { headline, even, asked } = openingHeadline(frame, state, iso(now));
  const earlier = told.data?.kind === 'ok' ? told.data.value.told : [];
  const changed = changedWords(state, earlier, forecast, now);
  const open = openedOf(state).open;
  const lead = [even, asked].filter((sentence) => sentence !== null);
  return (
    <div className="opening-head">
      <div className="stack">
        <h1 className="answer">{unbroken(headline)}</h1>
        {lead.length > 0 ? <p className="lead">{unbroken(lead.join(' '))}</p> : null}
        {changed && !open ? <p className="second opening-changed">{changed}</p> : null}
        {frame === null && !open ? (
          <p className="lead">{forecast?.why ?? words.commander.noForecast}</p>
        ) : null}
        {more ? <p className="no-print">{more}</p> : null}
      </div>
      {frame && !open ? (
        <OpeningStrip
          openings={frame.openings}
          askedFor={state.askedFor}
          start={state.start}
          zone={state.zone}
        />
      ) : null}
    </div>
  );
}
