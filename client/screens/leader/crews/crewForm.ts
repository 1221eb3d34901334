import type { Crew } from '#domain/tasks/work.ts';
import { readSiteTime, writeSiteTime } from '../../../parts/siteTime.ts';
import { atMinute, minuteOf } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';

/** A crew as typed; times as people at the site write them, empty for the whole build. */
export type TypedCrew = {
  readonly id: string;
  readonly name: string;
  readonly people: string;
  readonly chief: string;
  readonly from: string;
  readonly to: string;
  readonly attached: boolean;
};

export type Site = { readonly start: string; readonly zone: string };

export const emptyCrew: TypedCrew = {
  id: '',
  name: '',
  people: '',
  chief: '',
  from: '',
  to: '',
  attached: false,
};

export function typedOf(crew: Crew, { start, zone }: Site): TypedCrew {
  const time = (minute: number | undefined): string =>
    minute === undefined ? '' : writeSiteTime(atMinute(start, minute), zone, start);
  return {
    id: crew.id,
    name: crew.name,
    people: String(crew.people),
    chief: crew.chief ?? '',
    from: time(crew.from),
    to: time(crew.to),
    attached: crew.attached,
  };
}

export type CrewFaults = Partial<Record<'id' | 'name' | 'people' | 'hours', string>>;

/** The crew that was typed, keeping what the form does not show; or what is wrong with it, by field. */
export function crewIn(
  typed: TypedCrew,
  { start, zone }: Site,
  before: Crew | null,
  taken: ReadonlySet<string>,
): { readonly crew: Crew | null; readonly faults: CrewFaults } {
  const said = words.crews;
  const minute = (text: string): number | null | undefined => {
    if (text.trim() === '') return undefined;
    const at = readSiteTime(text, zone, start);
    return at === null ? null : minuteOf(start, at);
  };
  const from = minute(typed.from);
  const to = minute(typed.to);
  const wrongHours =
    from === null || to === null || (from ?? 0) < 0 || (to !== undefined && to <= (from ?? 0));
  const people = typed.people.trim();
  const id = typed.id.trim();
  const faults: CrewFaults = {
    ...((!/^[A-Za-z0-9._-]{1,64}$/.test(id) || taken.has(id)) && { id: said.newIdFault }),
    ...(typed.name.trim() === '' && { name: said.nameFault }),
    ...((!/^\d{1,3}$/.test(people) || Number(people) > 500) && { people: said.peopleFault }),
    ...(wrongHours && { hours: said.timeOrder }),
  };
  if (Object.keys(faults).length > 0) return { crew: null, faults };
  // What the form has no fields for stays as it was: rests, strength later on, who is lent, who can do what.
  const { from: _from, to: _to, chief: _chief, ...kept } = before ?? { from: 0, to: 0, chief: '' };
  const crew: Crew = {
    ...kept,
    id,
    name: typed.name.trim(),
    people: Number(people),
    skills: before?.skills ?? [],
    attached: typed.attached,
    ...(from !== undefined && from !== null && { from }),
    ...(to !== undefined && to !== null && { to }),
    ...(typed.chief.trim() !== '' && { chief: typed.chief.trim() }),
  };
  return { crew, faults };
}
