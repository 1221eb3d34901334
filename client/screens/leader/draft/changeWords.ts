import type { BuildState } from '#domain/progress/state.ts';
import { crewLabel, taskLabel } from '#domain/progress/words.ts';
import type { Change } from '#domain/tasks/change.ts';
import type { Minutes, People } from '#domain/tasks/task.ts';
import type { Crew } from '#domain/tasks/work.ts';
import { loadLabel } from '../../../words/entryWords.ts';
import { atMinute, clock, minutes, people } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';

type Named = Pick<BuildState, 'work' | 'start' | 'zone'>;

/** A change in words, against the order of work as it stands. */
export function changeSentence(state: Named, change: Change): string {
  const said = words.leader.change;
  switch (change.kind) {
    case 'task':
      return taskSentence(state, change);
    case 'link-add': {
      const { from, to, counts, wait } = change.link;
      const after = counts === 'start' ? said.linkStart : said.linkAdd;
      const later =
        wait > 0 ? said.wait(minutes(wait)) : wait < 0 ? said.early(minutes(-wait)) : '';
      return after(taskLabel(state, to), taskLabel(state, from)) + later;
    }
    case 'link-remove':
      return said.linkRemove(taskLabel(state, change.to), taskLabel(state, change.from));
    case 'crew':
      return crewSentence(state, change.crew);
    case 'load': {
      const before = state.work.loads.find(({ id }) => id === change.load)?.arrives ?? 0;
      return said.load(
        loadLabel(state, change.load),
        timeOf(state, change.arrives),
        timeOf(state, before),
      );
    }
  }
}

function taskSentence(state: Named, change: Extract<Change, { kind: 'task' }>): string {
  const said = words.leader.change;
  const task = state.work.tasks.find(({ id }) => id === change.task);
  const name = taskLabel(state, change.task);
  const parts: string[] = [];
  if (change.minutes) {
    parts.push(
      said.minutes(name, task ? minutesShort(task.minutes) : '', minutesShort(change.minutes)),
    );
  }
  if (change.people) {
    const before = task?.needs.map((need) => peopleShort(need.people)).join(' and ') ?? '';
    parts.push(said.people(name, before, change.people.map(peopleShort).join(' and ')));
  }
  if (change.fixed === null) parts.push(said.freed(name));
  if (change.fixed?.start !== undefined) {
    parts.push(said.fixed(name, timeOf(state, change.fixed.start)));
  }
  if (change.fixed?.crews) {
    const crews = change.fixed.crews.map((crew) => crewLabel(state, crew)).join(', ');
    parts.push(said.fixedCrews(name, crews));
  }
  return parts.join('; ');
}

function crewSentence(state: Named, crew: Crew): string {
  const said = words.leader.change;
  const before = state.work.crews.find(({ id }) => id === crew.id);
  if (!before) return said.crewNew(crew.name, people(crew.people));
  const parts: string[] = [];
  if (crew.name !== before.name) parts.push(said.crewName(crew.name));
  if (crew.people !== before.people)
    parts.push(said.crewPeople(people(crew.people), before.people));
  if (crew.chief !== before.chief) parts.push(said.crewChief(crew.chief ?? ''));
  if (crew.from !== before.from || crew.to !== before.to) {
    if (crew.from !== undefined) parts.push(said.crewFrom(timeOf(state, crew.from)));
    if (crew.to !== undefined) parts.push(said.crewTo(timeOf(state, crew.to)));
    if (crew.from === undefined && crew.to === undefined) parts.push(said.crewAlways);
  }
  if (crew.attached !== before.attached) parts.push(said.crewAttached(crew.attached));
  return said.crew(crewLabel(state, crew.id), parts.join(', ') || said.crewSame);
}

function timeOf({ start, zone }: Named, minute: number): string {
  return clock(atMinute(start, minute), zone, start);
}

/** "3/4/7": quick, likely and slow; one number where they are the same. */
export function minutesShort({ quick, likely, slow }: Minutes): string {
  return quick === slow ? String(likely) : `${quick}/${likely}/${slow}`;
}

/** "4-6-8": least, usual and most; one number where they are the same. */
export function peopleShort({ least, usual, most }: People): string {
  return least === most ? String(usual) : `${least}-${usual}-${most}`;
}
