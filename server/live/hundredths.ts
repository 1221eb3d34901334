import type { Forecast } from '#domain/forecast/forecast.ts';

/** To hundredths of a minute: plans count whole seconds, and every digit more is carried over a thin link. */
function hundredths(value: number): number {
  return Math.round(value * 100) / 100;
}

/** A forecast as it is sent up: minutes and shares to two decimals. The chance asked for keeps its own. */
export function forecastInHundredths(forecast: Forecast): Forecast {
  const { mean, sd, p10, p50, p80, p90, openings, percentiles, onChain } = forecast;
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
    onChain: onChain.map(({ task, share }) => ({ task, share: hundredths(share) })),
  };
}
