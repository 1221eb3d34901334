import type { BuildState } from '#domain/progress/state.ts';
import type { Crew } from '#domain/tasks/work.ts';
import { entrySentence } from '../../words/entryWords.ts';
import { crewsCalled, restOfName } from './callSigns.ts';
import { crewIdeas } from './crewIdeas.ts';
import { cutLine } from './cutLine.ts';
import { workOfCrew } from './likely.ts';
import type { Board, Idea, Reading } from './reading.ts';
import { siteIdeas } from './siteIdeas.ts';
import { crewsOfTask, taskIdeas } from './taskIdeas.ts';
import { warningOf } from './warning.ts';

/** As many ways to understand a line as a person can look over while somebody waits on the radio. */
const most = 7;

/**
 * Every way to understand a typed line, likeliest first: crew and task number in either order, then what happened;
 * or what came to the site. An empty line gives what is most likely to be told next.
 */
export function readLine(line: string, board: Board): readonly Reading[] {
  const { state, now } = board;
  const { tokens, at, by } = cutLine(line, now, state.zone);
  const ideas =
    tokens.length === 0
      ? line.trim() === ''
        ? dueIdeas(board)
        : []
      : [...siteIdeas(board, tokens), ...namedIdeas(board, tokens)];
  const readings = ideas.map(({ meant, score, crew, instead, guess = false }): Reading => {
    const sentence = instead ?? (meant ? entrySentence(state, meant) : '');
    const warning = warningOf(state, meant, at ?? now);
    return { sentence, meant, score, at, by: by ?? chiefOf(state, crew), warning, guess };
  });
  const seen = new Set<string>();
  return (
    readings
      .toSorted((a, b) => b.score - a.score)
      // What nobody said is not offered where it would break a rule, or could not be sent.
      .filter(({ guess, warning, meant }) => !guess || (warning === null && meant !== null))
      .filter(({ sentence }) => !seen.has(sentence) && seen.add(sentence))
      .slice(0, most)
  );
}

/** Who speaks for a crew unless the line names another: its chief. */
function chiefOf(state: BuildState, crew: string | undefined): string | null {
  if (crew === undefined) return null;
  return state.work.crews.find(({ id }) => id === crew)?.chief ?? null;
}

/** What is most likely to be told next: work that is under way gets finished, longest under way first. */
function dueIdeas({ state, now }: Board): Idea[] {
  return state.work.crews
    .flatMap(({ id }) => {
      const { atWork, next } = workOfCrew(state, id, now);
      const [task] = atWork.length > 0 ? atWork : next;
      return task ? [{ crew: id, task }] : [];
    })
    .toSorted((a, b) => since(state, a.task.id).localeCompare(since(state, b.task.id)))
    .flatMap(({ crew, task }, place) =>
      taskIdeas(state, crew, task, [])
        .toSorted((a, b) => b.score - a.score)
        .slice(0, 1)
        .map((idea) => ({ ...idea, score: 100 - place })),
    );
}

function since(state: BuildState, task: string): string {
  // What has not started comes after all that has.
  return state.tasks[task]?.startedAt ?? '9';
}

/** Lines that begin with a crew, a task number, or both. */
function namedIdeas(board: Board, tokens: readonly string[]): Idea[] {
  const { state } = board;
  const [first = '', ...rest] = tokens;
  const number = /^\d{1,4}$/.test(first) ? Number(first) : null;
  const task = state.work.tasks.find((one) => one.number === number);
  if (task) {
    const calledNext = rest[0] === undefined ? [] : crewsCalled(rest[0], state.work);
    const withCrew = calledNext.flatMap((crew) =>
      taskIdeas(state, crew.id, task, rest.slice(1 + restOfName(crew, rest.slice(1)))),
    );
    const without = crewsOfTask(state, task).flatMap((crew) => taskIdeas(state, crew, task, rest));
    return [...withCrew, ...without];
  }
  return crewsCalled(first, state.work).flatMap((crew, place) =>
    ofCrew(board, crew, rest.slice(restOfName(crew, rest))).map((idea) => ({
      ...idea,
      score: idea.score - place,
    })),
  );
}

function ofCrew(board: Board, crew: Crew, rest: readonly string[]): Idea[] {
  const { state } = board;
  // "left 57 done" and "left done 57" are one.
  const swapped = /^\d+$/.test(rest[1] ?? '') && !/^\d+$/.test(rest[0] ?? '');
  const [number, ...more] = swapped ? [rest[1], rest[0], ...rest.slice(2)] : rest;
  const task = state.work.tasks.find((one) => String(one.number) === number);
  const asTask = task
    ? taskIdeas(
        state,
        crew.id,
        task,
        more.filter((word) => word !== undefined),
      )
    : [];
  return [...asTask, ...crewIdeas(board, crew, rest)];
}
