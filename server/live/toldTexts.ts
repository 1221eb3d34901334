import type { ForecastFrame } from '#shared/wire.ts';
import type { ForecastMove } from '#shared/wireForecast.ts';

/** What is kept beside the record of a build: forecasts as they were sent up, and what moved them. */
export type Told =
  | { readonly kind: 'forecast'; readonly frame: ForecastFrame }
  | { readonly kind: 'move'; readonly move: ForecastMove };

/** The text of a forecast as it is kept: the frame that the pages got. */
export function frameText(frame: ForecastFrame): string {
  return JSON.stringify(frame);
}

export function moveText(moved: ForecastMove): string {
  return JSON.stringify({ moved });
}

/** Reads what `frameText` or `moveText` wrote. */
export function readTold(text: string): Told {
  const read = JSON.parse(text) as ForecastFrame | { readonly moved: ForecastMove };
  return 'moved' in read ? { kind: 'move', move: read.moved } : { kind: 'forecast', frame: read };
}
