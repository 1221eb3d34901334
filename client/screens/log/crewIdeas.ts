import { expectedCrews, peopleFrom } from '#domain/progress/plannedCrews.ts';
import type { BuildState } from '#domain/progress/state.ts';
import type { Crew } from '#domain/tasks/work.ts';
import { words } from '../../words/words.ts';
import { nextKeepOff, workOfCrew } from './likely.ts';
import type { Board, Idea } from './reading.ts';
import { taskIdeas } from './taskIdeas.ts';
import { crewVerbs, meanings, taskVerbs } from './verbs.ts';

/** What a line may mean once its crew is known and no task number follows. */
export function crewIdeas({ state, now }: Board, crew: Crew, rest: readonly string[]): Idea[] {
  const [first, second] = rest;
  const ideas = [...countIdeas(state, crew, rest), ...verbIdeas(state, crew, rest)];
  // "left done": its only work, or one of several.
  const verbs = meanings(taskVerbs, first);
  if (first === undefined || (verbs.length > 0 && !/^\d+$/.test(second ?? ''))) {
    const { atWork, next } = workOfCrew(state, crew.id, now);
    for (const [place, task] of [...atWork, ...next].entries()) {
      ideas.push(
        ...taskIdeas(state, crew.id, task, rest).map((idea) => ({
          ...idea,
          score: idea.score - 4 * place,
        })),
      );
    }
  }
  return ideas;
}

/** "6 fit", "7/7", "7 of 7". */
function countIdeas(state: BuildState, crew: Crew, rest: readonly string[]): Idea[] {
  const [first, second] = rest;
  if (/^\d+$/.test(first ?? '') && meanings(crewVerbs, second).includes('strength')) {
    return [strength(crew, Number(first))];
  }
  const count = countsIn(rest);
  if (!count) return [];
  return state.halt ? [down(state, crew, rest)] : off(state, crew, rest);
}

function verbIdeas(state: BuildState, crew: Crew, [first, ...more]: readonly string[]): Idea[] {
  return meanings(crewVerbs, first).flatMap((verb) => ideasOf(state, crew, verb, more));
}

function ideasOf(
  state: BuildState,
  crew: Crew,
  verb: keyof typeof crewVerbs,
  more: readonly string[],
): Idea[] {
  switch (verb) {
    case 'strength':
      return /^\d+$/.test(more[0] ?? '') ? [strength(crew, Number(more[0]))] : [];
    case 'off':
      return off(state, crew, more);
    case 'down':
      return [down(state, crew, more)];
    case 'relief':
      return [
        { meant: { kind: 'tell-relief', body: { crew: crew.id } }, crew: crew.id, score: 40 },
      ];
    case 'hurt': {
      const outOfWork = more[0]?.toLowerCase() === 'out';
      const what = (outOfWork ? more.slice(1) : more).join(' ');
      const body = { crew: crew.id, what, outOfWork };
      return [{ meant: { kind: 'tell-hurt', body }, crew: crew.id, score: 40 }];
    }
  }
}

function strength(crew: Crew, fit: number): Idea {
  return {
    meant: { kind: 'tell-strength', body: { crew: crew.id, fit } },
    crew: crew.id,
    score: 45,
  };
}

/** "off 7/7", with the number of the keep-off task where it is not the next one. */
function off(state: BuildState, crew: Crew, rest: readonly string[]): Idea[] {
  const number = Number(rest.at(-1));
  const said = state.work.tasks.find((task) => task.keepOff && task.number === number);
  const named = said && rest.length > 1 && !rest.at(-1)?.includes('/') ? said : null;
  const task = named ?? nextKeepOff(state);
  if (!task) return [{ meant: null, crew: crew.id, score: 40, instead: words.log.noKeepOff }];
  const fit = state.crews[crew.id]?.fit ?? crew.people;
  // A crew that takes part in the task leaves its people at it: the others are off.
  const own = expectedCrews(state.plan, task).named.includes(crew.id)
    ? peopleFrom(state.plan, task, crew.id)
    : 0;
  const all = { some: Math.max(0, fit - own), all: fit };
  const count = countsIn(named ? rest.slice(0, -1) : rest) ?? all;
  const body = { task: task.id, crew: crew.id, off: count.some, of: count.all };
  return [{ meant: { kind: 'tell-off', body }, crew: crew.id, score: 45 }];
}

function down(state: BuildState, crew: Crew, rest: readonly string[]): Idea {
  if (!state.halt) return { meant: null, crew: crew.id, score: 30, instead: words.log.noHalt };
  const fit = state.crews[crew.id]?.fit ?? crew.people;
  const count = countsIn(rest) ?? { some: fit, all: fit };
  const body = { crew: crew.id, people: count.some, of: count.all };
  return { meant: { kind: 'acknowledge-halt', body }, crew: crew.id, score: 55 };
}

/** "7/7", "7 of 7". */
function countsIn(rest: readonly string[]): { readonly some: number; readonly all: number } | null {
  const [, some, all] = /^(\d{1,3})\s*(?:\/|of)\s*(\d{1,3})$/i.exec(rest.join(' ')) ?? [];
  return some === undefined || all === undefined ? null : { some: Number(some), all: Number(all) };
}
