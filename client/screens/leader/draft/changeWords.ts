import { crewLabel, taskLabel } from '#domain/progress/words.ts';
import { type Change, changedCrew } from '#domain/tasks/change.ts';
import type { Minutes, People } from '#domain/tasks/task.ts';
import { loadLabel } from '../../../words/entryWords.ts';
import { minutes } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { crewSentence, type Named, timeOf } from './crewWords.ts';

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
    case 'crew-name':
    case 'crew-hours': {
      const before = state.work.crews.find(({ id }) => id === change.crew);
      return before ? crewSentence(state, changedCrew(before, change)) : change.crew;
    }
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

/** "3/4/7": quick, likely and slow; one number where they are the same. */
export function minutesShort({ quick, likely, slow }: Minutes): string {
  return quick === slow ? String(likely) : `${quick}/${likely}/${slow}`;
}

/** "4-6-8": least, usual and most; one number where they are the same. */
export function peopleShort({ least, usual, most }: People): string {
  return least === most ? String(usual) : `${least}-${usual}-${most}`;
}
