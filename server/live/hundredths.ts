import type { Forecast } from '#domain/forecast/forecast.ts';

/** To hundredths of a minute: plans count whole seconds, and every digit more is carried over a thin link. */
export function hundredths(value: number): number {
  return Math.round(value * 100) / 100;
}

/** A share that is nothing in hundredths is left out. */
function shares<Of extends { readonly share: number }>(of: readonly Of[]): Of[] {
  return of
    .map((each) => ({ ...each, share: hundredths(each.share) }))
    .filter(({ share }) => share > 0);
}

/** A forecast as it is sent up: minutes and shares to two decimals. The chance asked for keeps its own. */
export function forecastInHundredths(forecast: Forecast): Forecast {
  const { mean, sd, p10, p50, p80, p90, openings, percentiles } = forecast;
  const { onChain, crewsOnChain, milestones } = forecast;
  return {
    ...forecast,
    mean: hundredths(mean),
    sd: hundredths(sd),
    p10: hundredths(p10),
    p50: hundredths(p50),
    p80: hundredths(p80),
    p90: hundredths(p90),
    openings: openings.map(hundredths),
    percentiles: percentiles.map(hundredths),
    onChain: shares(onChain),
    ...(crewsOnChain && { crewsOnChain: shares(crewsOnChain) }),
    ...(milestones && {
      milestones: milestones.map((milestone) => ({
        task: milestone.task,
        p10: hundredths(milestone.p10),
        p50: hundredths(milestone.p50),
        p80: hundredths(milestone.p80),
        p90: hundredths(milestone.p90),
      })),
    }),
  };
}
