import type { BuildState } from '#domain/progress/state.ts';
import { crewLabel } from '#domain/progress/words.ts';
import type { Crew } from '#domain/tasks/work.ts';
import { atMinute, clock, people } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';

export type Named = Pick<BuildState, 'work' | 'start' | 'zone'>;

/** A crew as it would be, in words, against the order of work as it stands. */
export function crewSentence(state: Named, crew: Crew): string {
  const said = words.leader.change;
  const before = state.work.crews.find(({ id }) => id === crew.id);
  if (!before) {
    const parts = [said.crewNew(crew.name, people(crew.people)), ...hoursParts(state, {}, crew)];
    return parts.join(', ');
  }
  const parts: string[] = [];
  if (crew.name !== before.name) parts.push(said.crewName(crew.name));
  if (crew.people !== before.people)
    parts.push(said.crewPeople(people(crew.people), before.people));
  if (crew.chief !== before.chief) parts.push(said.crewChief(crew.chief ?? ''));
  parts.push(...hoursParts(state, before, crew));
  if (crew.attached !== before.attached) parts.push(said.crewAttached(crew.attached));
  return said.crew(crewLabel(state, crew.id), parts.join(', ') || said.crewSame);
}

type Hours = Pick<Crew, 'from' | 'to' | 'rests' | 'lent' | 'strength'>;

/** What is other about when how many of it are there. */
function hoursParts(state: Named, before: Hours, after: Hours): string[] {
  const said = words.leader.change;
  const parts: string[] = [];
  if (after.from !== before.from || after.to !== before.to) {
    if (after.from !== undefined) parts.push(said.crewFrom(timeOf(state, after.from)));
    if (after.to !== undefined) parts.push(said.crewTo(timeOf(state, after.to)));
    if (after.from === undefined && after.to === undefined) parts.push(said.crewAlways);
  }
  const other = (key: 'rests' | 'lent' | 'strength') =>
    JSON.stringify(after[key] ?? []) !== JSON.stringify(before[key] ?? []);
  if (other('rests')) parts.push(restsWords(state, after) || said.crewNoRests);
  if (other('lent')) parts.push(lentWords(state, after) || said.crewNoneLent);
  if (other('strength')) parts.push(strengthWords(state, after) || said.crewNoSteps);
  return parts;
}

/** "rests 12:00 to 12:30, 4 people 13:00 to 13:30"; empty without rests. */
export function restsWords(state: Named, { rests = [] }: Pick<Hours, 'rests'>): string {
  const said = words.leader.change;
  const each = rests.map(({ from, to, people: some }) => {
    const time = said.spell(timeOf(state, from), timeOf(state, to));
    return some === undefined ? time : said.someOf(people(some), time);
  });
  return each.length > 0 ? said.crewRests(each.join(', ')) : '';
}

/** "lends 2 people to Brace 14:00 to 15:00"; empty when nobody is lent. */
export function lentWords(state: Named, { lent = [] }: Pick<Hours, 'lent'>): string {
  const said = words.leader.change;
  const each = lent.map(({ crew, people: some, from, to }) => {
    const begins = timeOf(state, from);
    const time = to === undefined ? said.onward(begins) : said.spell(begins, timeOf(state, to));
    return said.lentTo(people(some), crewLabel(state, crew), time);
  });
  return each.length > 0 ? said.crewLends(each.join(', ')) : '';
}

/** "5 people from 16:00"; empty when its strength stays. */
export function strengthWords(state: Named, { strength = [] }: Pick<Hours, 'strength'>): string {
  const said = words.leader.change;
  return strength
    .map(({ from, people: some }) => said.someOf(people(some), said.onward(timeOf(state, from))))
    .join(', ');
}

/** A minute after the start of the build as the time of day at the site. */
export function timeOf({ start, zone }: Pick<Named, 'start' | 'zone'>, minute: number): string {
  return clock(atMinute(start, minute), zone, start);
}
