import { useEffect, useState } from 'react';
import type { ForecastHistory, FullForecast } from '#shared/wireForecast.ts';
import { usePorts } from '../../data/ports/ports.ts';
import { useBuild } from '../../data/useBuild.ts';
import { type Fetched, useFetched } from '../../data/useFetched.ts';

/** Milliseconds after a forecast by which the server has mostly found out what moved it: boards come first there. */
const explained = 5000;

/** The forecast with all that it rests on, fetched anew with each forecast that the feed brings. */
export function useFull(): Fetched<FullForecast> {
  return useFetched('forecast/full', useNews());
}

/** How the forecast itself moved, up to the last that the feed brought. */
export function useHistory(): Fetched<ForecastHistory> {
  return useFetched('forecast/history', useNews());
}

/** Changes with each forecast, and once more when what moved it should be known. */
function useNews(): string {
  const { forecast } = useBuild();
  const { clock } = usePorts();
  const [settled, setSettled] = useState<string | undefined>(undefined);
  const at = forecast?.at;
  useEffect(() => clock.after(explained, () => setSettled(at)), [clock, at]);
  return `${at} ${settled === at}`;
}
