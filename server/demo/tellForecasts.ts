import type { Entry } from '#domain/progress/entry.ts';
import { evolve } from '#domain/progress/evolve.ts';
import { type BuildState, emptyBuild } from '#domain/progress/state.ts';
import { seenNow } from '#domain/progress/views/seenNow.ts';
import { forecastJob } from '../live/forecastJob.ts';
import { forecastInHundredths } from '../live/hundredths.ts';
import { frameText } from '../live/toldTexts.ts';
import type { Site } from '../site.ts';

/** Minutes between two forecasts that were sent up while the demo was played, and the runs of each. */
const every = 20;
const runs = 1000;

/** Keeps beside the record what a server would have told from the start until `now`, each from what was known then. */
export async function tellForecasts(
  { ledger, planner }: Pick<Site, 'ledger' | 'planner'>,
  build: string,
  { start, now }: { readonly start: Date; readonly now: Date },
): Promise<void> {
  const entries = (await ledger.entries(build, 0, 100_000)).map(
    ({ text }) => JSON.parse(text) as Entry,
  );
  let state: BuildState = emptyBuild;
  for (let time = start.getTime(); time < now.getTime(); time += every * 60_000) {
    const known = entries.filter(
      ({ number, receivedAt }) => number > state.number && Date.parse(receivedAt) <= time,
    );
    state = known.reduce(evolve, state);
    if (state.plan === null) continue;
    const at = new Date(time).toISOString();
    const { number } = state;
    const job = forecastJob(build, state, seenNow(state, state.plan, at), runs);
    const forecast = forecastInHundredths(await planner.forecast(job));
    await ledger.keepTold(build, {
      number,
      at,
      text: frameText({ number, at, forecast, why: null }),
    });
  }
}
