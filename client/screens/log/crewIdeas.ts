import { expectedCrews, peopleFrom } from '#domain/progress/plannedCrews.ts';
import type { BuildState } from '#domain/progress/state.ts';
import type { Task } from '#domain/tasks/task.ts';
import type { Crew } from '#domain/tasks/work.ts';
import { words } from '../../words/words.ts';
import { countIn, countsIn } from './counts.ts';
import { nextKeepOff, workOfCrew } from './likely.ts';
import type { Board, Idea } from './reading.ts';
import { taskIdeas } from './taskIdeas.ts';
import { crewVerbs, meanings, taskVerbs } from './verbs.ts';

/** What a line may mean once its crew is known and no task number follows. */
export function crewIdeas({ state, now }: Board, crew: Crew, rest: readonly string[]): Idea[] {
  const [first, second] = rest;
  const ideas = [...countIdeas(state, crew, rest), ...verbIdeas(state, crew, rest)];
  // "left done": its only work; where it may be one of several, which one has to be chosen.
  const verbs = meanings(taskVerbs, first);
  if (first === undefined || (verbs.length > 0 && !/^\d+$/.test(second ?? ''))) {
    const { atWork, next } = workOfCrew(state, crew.id, now);
    const only = onlyOne(state, crew, verbs, [...atWork, ...next]);
    for (const [place, task] of [...atWork, ...next].entries()) {
      ideas.push(
        ...taskIdeas(state, crew.id, task, rest).map((idea) => ({
          ...idea,
          score: idea.score - 4 * place,
          guess: (idea.guess ?? false) || task.id !== only,
        })),
      );
    }
  }
  return ideas;
}

/** How a task has to stand for a word about it to be its own. */
const fitting = {
  started: 'to-come',
  finished: 'at-work',
  stopped: 'at-work',
  part: 'at-work',
  resumed: 'stopped',
} as const;

/** The one task of a crew that a word can be about; null when there is none or more than one. */
function onlyOne(
  state: BuildState,
  crew: Crew,
  verbs: readonly (keyof typeof fitting)[],
  tasks: readonly Task[],
): string | null {
  const own = tasks.filter(({ id }) => {
    const share = state.tasks[id]?.shares.find((one) => one.crew === crew.id);
    return verbs.some((verb) => fitting[verb] === (share?.status ?? 'to-come'));
  });
  return own.length === 1 ? own[0]!.id : null;
}

/** "6 fit", "7/7", "7 of 7". */
function countIdeas(state: BuildState, crew: Crew, rest: readonly string[]): Idea[] {
  const [first, second] = rest;
  const fit = countIn(first);
  if (fit !== null && meanings(crewVerbs, second).includes('strength')) {
    return [strength(crew, fit)];
  }
  const count = countsIn(rest);
  if (!count) return [];
  return state.halt ? down(state, crew, rest) : off(state, crew, rest);
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
    case 'strength': {
      const fit = countIn(more[0]);
      return fit === null ? [] : [strength(crew, fit)];
    }
    case 'off':
      return off(state, crew, more);
    case 'down':
      return down(state, crew, more);
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

/**
 * "off 7/7", with the number of the keep-off task where it is not the next one. A count that nobody said is offered,
 * never sent by Enter alone: people stand behind it.
 */
export function off(state: BuildState, crew: Crew, rest: readonly string[]): Idea[] {
  const number = Number(rest.at(-1));
  const said = state.work.tasks.find((task) => task.keepOff && task.number === number);
  const numbered = said && (rest.length === 1 || countsIn(rest.slice(0, -1)) !== null);
  const task = numbered ? said : nextKeepOff(state);
  if (!task) return [{ meant: null, crew: crew.id, score: 40, instead: words.log.noKeepOff }];
  const fit = state.crews[crew.id]?.fit ?? crew.people;
  // A crew that takes part in the task leaves its people at it: the others are off.
  const own = expectedCrews(state.plan, task).named.includes(crew.id)
    ? peopleFrom(state.plan, task, crew.id)
    : 0;
  const told = numbered ? rest.slice(0, -1) : rest;
  const count = countsIn(told);
  if (!count && !isAll(told)) return [];
  const { some, all } = count ?? { some: Math.max(0, fit - own), all: fit };
  const body = { task: task.id, crew: crew.id, off: some, of: all };
  return [{ meant: { kind: 'tell-off', body }, crew: crew.id, score: 45, guess: !count }];
}

/** "down 7/7": loads down and clear, in answer to a halt. */
export function down(state: BuildState, crew: Crew, rest: readonly string[]): Idea[] {
  if (!state.halt) return [{ meant: null, crew: crew.id, score: 30, instead: words.log.noHalt }];
  const fit = state.crews[crew.id]?.fit ?? crew.people;
  const count = countsIn(rest);
  if (!count && !isAll(rest)) return [];
  const { some, all } = count ?? { some: fit, all: fit };
  const body = { crew: crew.id, people: some, of: all };
  return [{ meant: { kind: 'acknowledge-halt', body }, crew: crew.id, score: 55, guess: !count }];
}

function isAll(rest: readonly string[]): boolean {
  return rest.length === 0 || (rest.length === 1 && rest[0]?.toLowerCase() === 'all');
}
