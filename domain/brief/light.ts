import { getMoonIllumination, getTimes } from 'suncalc';
import { clockTime } from './clockTime.ts';

export type SitePlace = { readonly latitude: number; readonly longitude: number };

/**
 * Sun times of one day as ISO 8601 UTC; null where the sun does not pass that height. Civil twilight
 * ends with the sun's centre 6 degrees below the horizon, nautical with 12 (definitions of the US
 * Naval Observatory, quoted at rhodesmill.org/skyfield/almanac.html).
 */
export type Light = {
  readonly nauticalDawn: string | null;
  readonly civilDawn: string | null;
  readonly sunrise: string | null;
  readonly sunset: string | null;
  readonly civilDusk: string | null;
  readonly nauticalDusk: string | null;
  /** The sun stays up, or down, the whole day; null where it rises and sets. */
  readonly polar: 'day' | 'night' | null;
};

/** The trade's names: begin of morning and end of evening twilight, civil and nautical. */
const lightNames = {
  nauticalDawn: 'BMNT',
  civilDawn: 'BMCT',
  sunrise: 'sunrise',
  sunset: 'sunset',
  civilDusk: 'EECT',
  nauticalDusk: 'EENT',
} as const;

/** Sun times of the day, from one lowest sun to the next, that holds the instant (ISO 8601). Degrees north and east. */
export function lightOf({ latitude, longitude }: SitePlace, instant: string): Light {
  const times = getTimes(new Date(instant), latitude, longitude);
  const iso = (time: Date | null) => time?.toISOString() ?? null;
  return {
    nauticalDawn: iso(times.nauticalDawn),
    civilDawn: iso(times.dawn),
    sunrise: iso(times.sunrise),
    sunset: iso(times.sunset),
    civilDusk: iso(times.dusk),
    nauticalDusk: iso(times.nauticalDusk),
    polar: times.alwaysUp ? 'day' : times.alwaysDown ? 'night' : null,
  };
}

/** The light that work still has, seen from `now` (ISO 8601), in one or two sentences with clock times of the site. */
export function lightSentence(place: SitePlace, now: string, zone: string): string {
  const light = lightOf(place, now);
  if (light.polar === 'day') return 'The sun stays up all day.';
  const said = (name: keyof typeof lightNames, from: Light = light) => {
    const time = from[name];
    if (time === null) return [];
    const minute = new Date(toMinute(Date.parse(time))).toISOString();
    return [`${lightNames[name]} ${clockTime(minute, zone, now)}`];
  };
  if (light.polar === 'night') {
    const twilight = [...said('nauticalDawn'), ...said('civilDawn')];
    twilight.push(...said('civilDusk'), ...said('nauticalDusk'));
    const rest = twilight.length > 0 ? `${sentence(twilight)}` : 'There is no twilight.';
    return `The sun does not rise today. ${rest}`;
  }
  const toCome = (name: keyof typeof lightNames) =>
    light[name] !== null && Date.parse(light[name]) > Date.parse(now) ? said(name) : [];
  if (toCome('sunset').length > 0) {
    const morning = [...toCome('nauticalDawn'), ...toCome('civilDawn'), ...toCome('sunrise')];
    const evening = [...said('sunset'), ...said('civilDusk'), ...said('nauticalDusk')];
    return sentence([...morning, ...evening]);
  }
  const next = lightOf(place, new Date(Date.parse(now) + 86_400_000).toISOString());
  const dusk = [...toCome('civilDusk'), ...toCome('nauticalDusk')];
  const dawn = [
    ...said('nauticalDawn', next),
    ...said('civilDawn', next),
    ...said('sunrise', next),
  ];
  return `The sun has set. ${sentence([...dusk, ...dawn])}`;
}

/** Share of the moon's disc that is lit at an instant (ISO 8601), 0 new to 1 full; whether it is up is another matter. */
export function moonLit(instant: string): number {
  return getMoonIllumination(new Date(instant)).fraction;
}

/** How much the moon may help, in a sentence: "The moon is 8 % lit." */
export function moonSentence(instant: string): string {
  return `The moon is ${Math.round(100 * moonLit(instant))} % lit.`;
}

/** A sun time (milliseconds since 1970) as almanacs give it: to the nearest minute. */
export function toMinute(at: number): number {
  return Math.round(at / 60_000) * 60_000;
}

function sentence(items: readonly string[]): string {
  const text = items.join(', ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
