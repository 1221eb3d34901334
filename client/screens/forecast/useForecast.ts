import type { ForecastHistory, FullForecast } from '#shared/wireForecast.ts';
import { useBuild } from '../../data/useBuild.ts';
import { type Fetched, useFetched } from '../../data/useFetched.ts';

/** The forecast with all that it rests on, fetched anew with each forecast that the feed brings. */
export function useFull(): Fetched<FullForecast> {
  const { forecast } = useBuild();
  return useFetched('forecast/full', forecast?.at);
}

/** How the forecast itself moved, up to the last that the feed brought. */
export function useHistory(): Fetched<ForecastHistory> {
  const { forecast } = useBuild();
  return useFetched('forecast/history', forecast?.at);
}
