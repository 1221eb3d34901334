import { type Light, lightOf, type SitePlace } from '#domain/brief/light.ts';

/** How light it is: the sun is up, or down by less than 6, less than 12, or more than 12 degrees. */
export type LightPhase = 'day' | 'civil' | 'nautical' | 'night';

/** One moment at which the light changes, by the trade's name. */
export type LightTurn = { readonly name: keyof typeof after; readonly at: number };

export type LightCourse = {
  /** In order and without gaps over the whole window. Milliseconds since 1970. */
  readonly spells: readonly {
    readonly phase: LightPhase;
    readonly from: number;
    readonly to: number;
  }[];
  readonly turns: readonly LightTurn[];
};

/** What begins with each turn. */
const after = {
  nauticalDawn: 'nautical',
  civilDawn: 'civil',
  sunrise: 'day',
  sunset: 'civil',
  civilDusk: 'nautical',
  nauticalDusk: 'night',
} as const satisfies Partial<Record<keyof Light, LightPhase>>;

/** What ended with each turn. */
const before = {
  nauticalDawn: 'night',
  civilDawn: 'nautical',
  sunrise: 'civil',
  sunset: 'day',
  civilDusk: 'civil',
  nauticalDusk: 'nautical',
} as const satisfies Record<keyof typeof after, LightPhase>;

const names = Object.keys(after) as (keyof typeof after)[];
const day = 86_400_000;

/** The light at a place between two moments (milliseconds since 1970), also where the sun does not rise or set. */
export function lightCourse(place: SitePlace, from: number, to: number): LightCourse {
  const known = new Map<string, LightTurn>();
  const days: Light[] = [];
  // A day more at either end: days of the sun are not days of the calendar.
  for (let at = from - day; at <= to + day; at += day / 2) {
    const light = lightOf(place, new Date(at).toISOString());
    days.push(light);
    for (const name of names) {
      const time = light[name];
      if (time !== null) known.set(`${name} ${time}`, { name, at: Date.parse(time) });
    }
  }
  const all = [...known.values()].toSorted((one, other) => one.at - other.at);
  const turns = all.filter(({ at }) => at > from && at < to);
  const next = all.find(({ at }) => at > from);
  const last = all.findLast(({ at }) => at <= from);
  const still: LightPhase = days.some(({ polar }) => polar === 'day') ? 'day' : 'night';
  let phase: LightPhase = last ? after[last.name] : next ? before[next.name] : still;
  let begin = from;
  const spells: { phase: LightPhase; from: number; to: number }[] = [];
  for (const { name, at } of turns) {
    spells.push({ phase, from: begin, to: at });
    phase = after[name];
    begin = at;
  }
  spells.push({ phase, from: begin, to });
  return { spells, turns };
}
