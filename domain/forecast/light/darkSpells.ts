import { getPosition, getTimes } from 'suncalc';
import type { DarkSpell } from './lightClock.ts';

const day = 86_400_000;

/** suncalc gives the height with refraction at the horizon, 0.48 degrees, also for a sun far below it. */
const civilHeight = -6 + 0.484;

/**
 * When it is dark at the place, from the day before `start` (ISO 8601 UTC) for so many minutes: from the end of
 * evening civil twilight (EECT) to the begin of morning civil twilight (BMCT), the sun's centre 6 degrees down. Where
 * the sun stays above that the list is empty; where it stays below, one spell covers all. Minutes after `start`.
 */
export function darkSpells(
  place: { readonly latitude: number; readonly longitude: number },
  start: string,
  minutes: number,
): DarkSpell[] {
  const { latitude, longitude } = place;
  const begin = Date.parse(start) - day;
  const end = Date.parse(start) + minutes * 60_000;
  const turns: { at: number; dark: boolean }[] = [];
  // One solar day more at either side: dawn and dusk near midnight belong to a neighbouring date.
  for (let date = begin - day; date <= end + day; date += day) {
    const { dawn, dusk } = getTimes(new Date(date), latitude, longitude);
    if (dawn) turns.push({ at: dawn.getTime(), dark: false });
    if (dusk) turns.push({ at: dusk.getTime(), dark: true });
  }
  turns.sort((one, other) => one.at - other.at);
  const within = turns.filter(({ at }) => at > begin && at < end);
  const first = turns.find(({ at }) => at > begin);
  let dark = first
    ? !first.dark
    : getPosition(new Date(begin), latitude, longitude).altitude < civilHeight;
  let from = begin;
  const spells: DarkSpell[] = [];
  const minute = (at: number) => (at - Date.parse(start)) / 60_000;
  for (const turn of [...within, { at: end, dark: false }]) {
    if (dark && !turn.dark) spells.push({ from: minute(from), to: minute(turn.at) });
    if (turn.dark && !dark) from = turn.at;
    dark = turn.dark;
  }
  return spells;
}
