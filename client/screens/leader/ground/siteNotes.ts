import type { Ground } from '#domain/bridge/ground.ts';
import { words } from '../../../words/words.ts';

/** What was measured and cannot be drawn from the side, in a few words each. */
export function siteNotes({ wind, near, far, rollerFall, place }: Ground): string[] {
  const said = words.ground.mark;
  const fall = (value: number | null | undefined) =>
    value === null || value === undefined
      ? words.ground.notMeasured
      : `${(value * 100).toFixed(1)} %`;
  const crossFalls = [near.crossFall ?? null, far.crossFall ?? null];
  return [
    ...(wind === null || wind === undefined ? [] : [said.wind(`${wind} m/s`)]),
    ...(crossFalls.every((value) => value === null)
      ? []
      : [said.crossFall(fall(near.crossFall), fall(far.crossFall))]),
    ...(rollerFall === null || rollerFall === undefined ? [] : [said.rollerFall(fall(rollerFall))]),
    ...(place
      ? [`${degrees(place.latitude, 'N', 'S')} ${degrees(place.longitude, 'E', 'W')}`]
      : []),
  ];
}

function degrees(value: number, plus: string, minus: string): string {
  return `${Math.abs(value).toFixed(3)}° ${value < 0 ? minus : plus}`;
}
