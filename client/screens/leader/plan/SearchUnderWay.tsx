import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { atMinute, clock, count, iso, minutes, span } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import '../../../look/search.css';
import { useDraft } from '../draft/DraftContext.ts';

/** The search under way: best plan and bound so far in one line, more on demand, and the two ways to end it. */
export function SearchUnderWay({ id }: { readonly id: string }) {
  const { state, now, jobs } = useBuild();
  const { trial } = useDraft();
  const texts = words.plan;
  const job = jobs[id];
  const news = job?.news;
  const time = (minute: number): string =>
    clock(atMinute(state.start, minute), state.zone, iso(now));
  return (
    <section className="stack search-under-way" aria-label={texts.searching}>
      <p className="search-line" role="status">
        {news ? (
          <>
            <strong>{texts.searchBest(time(news.minutesToOpen))}</strong>{' '}
            {news.proven ? texts.searchProven : texts.searchBound(time(news.lowerBound))}
          </>
        ) : (
          texts.searchBegins
        )}
      </p>
      <progress
        max={1}
        value={job ? Math.min(1, job.done / job.of) : undefined}
        aria-label={texts.searching}
      />
      <div className="row">
        <Button look="solid" disabled={!news} onClick={trial.take}>
          {texts.take}
        </Button>
        <Button onClick={trial.drop}>{texts.giveUp}</Button>
      </div>
      {job && news ? (
        <details className="quiet">
          <summary>{texts.searchMore}</summary>
          <p className="second reading">
            {texts.searchTried(
              texts.tries(Math.round(news.schedules), count(Math.round(news.schedules))),
              span(job.done * 1000),
            )}{' '}
            {news.proven
              ? texts.searchGapNone
              : texts.searchGap(minutes(Math.ceil(news.minutesToOpen - news.lowerBound)))}
          </p>
        </details>
      ) : null}
    </section>
  );
}
