import { mayWorkAt } from '#domain/progress/plannedCrews.ts';
import { rollCall } from '#domain/progress/rules/halt.ts';
import { keepOffCheck } from '#domain/progress/views/keepOff.ts';
import { taskLabel } from '#domain/progress/words.ts';
import type { Task } from '#domain/tasks/task.ts';
import type { Crew } from '#domain/tasks/work.ts';
import { words } from '../../words/words.ts';
import { crewsCalled, restOfName } from './callSigns.ts';
import { crewIdeas, down, off } from './crewIdeas.ts';
import { tasksNamed } from './findTasks.ts';
import { nextKeepOff } from './likely.ts';
import type { Board, Idea } from './reading.ts';
import { siteIdeas } from './siteIdeas.ts';
import { crewsOfTask, taskIdeas } from './taskIdeas.ts';
import { crewVerbs, isWhole, meanings, siteVerbs, taskVerbs } from './verbs.ts';

/** What a line may mean that begins with a crew, a task by number or by name, or with what happened to it. */
export function namedIdeas(board: Board, typed: readonly string[]): Idea[] {
  const { state } = board;
  const everyCrew = missingIdeas(board, typed);
  if (everyCrew.length > 0) return everyCrew;
  const tokens = verbBehind(board, typed);
  const [first = '', ...rest] = tokens;
  if (/^\d{1,4}$/.test(first)) return numberIdeas(board, Number(first), rest);
  const byName = nameIdeas(board, tokens);
  const called = crewsCalled(first, state.work);
  const alike = called.filter(({ id, name }) => id !== first && begins(name, first));
  const byCrew = called.flatMap((crew, place) => {
    // Letters that several crews begin with, or a word inside a crew's name that tasks bear too, name nobody for sure.
    const doubtful = alike.length > 1 || (byName.length > 0 && !begins(crew.name, first));
    return ofCrew(board, crew, rest.slice(restOfName(crew, rest))).map((idea) => ({
      ...idea,
      score: idea.score - place,
      guess: idea.guess === true || (doubtful && !isOnlyFor(board, called, crew, idea)),
    }));
  });
  // "left stopped" is about a crew, not about every task with a left side.
  const isCrew = byCrew.length > 0 && called.some(({ name }) => begins(name, first));
  return isCrew ? byCrew : [...byCrew, ...byName];
}

function begins(name: string, typed: string): boolean {
  return name.toLowerCase().startsWith(typed.toLowerCase());
}

/** Whether a report about a task fits one alone of the crews that the letters may mean. */
function isOnlyFor(
  { state }: Board,
  called: readonly Crew[],
  crew: Crew,
  { meant }: Idea,
): boolean {
  if (!meant || !('task' in meant.body) || meant.kind === 'tell-off') return false;
  const { task: id } = meant.body;
  const task = state.work.tasks.find((one) => one.id === id);
  if (!task) return false;
  const fitting = called.filter(({ id: each }) => mayWorkAt(state, task, each));
  return fitting.length === 1 && fitting[0] === crew;
}

/** "off" or "down" alone, or of all: the crews that have not told it, one to be chosen after the other. */
function missingIdeas({ state, now }: Board, typed: readonly string[]): Idea[] {
  const said = typed.filter((word) => word.toLowerCase() !== 'all');
  const [verb, another] = said.map((word) => word.toLowerCase());
  if (another !== undefined || (verb !== 'off' && verb !== 'down')) return [];
  const at = new Date(now).toISOString();
  const task = nextKeepOff(state);
  const open =
    verb === 'down'
      ? rollCall(state, at).flatMap(({ crew, answered }) => (answered ? [] : [crew]))
      : task
        ? keepOffCheck(state, task.id, at).flatMap(({ kind, of, met }) =>
            kind === 'off' && !met ? [of] : [],
          )
        : [];
  if (verb === 'down' && !state.halt) {
    return [{ meant: null, score: 30, instead: words.log.noHalt }];
  }
  if (open.length === 0) {
    const nobody = verb === 'off' && !task ? words.log.noKeepOff : words.log.allTold;
    return [{ meant: null, score: 30, instead: nobody }];
  }
  const crews = state.work.crews.filter(({ id }) => open.includes(id));
  return crews.flatMap((crew, place) =>
    (verb === 'off' ? off(state, crew, []) : down(state, crew, [])).map((idea) => ({
      ...idea,
      score: idea.score - place,
    })),
  );
}

/** "done left 57" is "left 57 done". */
function verbBehind({ state }: Board, typed: readonly string[]): readonly string[] {
  const [verb = '', ...rest] = typed;
  const [next = '', ...more] = rest;
  if (next === '' || !(isWhole(taskVerbs, verb) || isWhole(crewVerbs, verb))) return typed;
  if (/^\d{1,4}$/.test(next)) return [next, verb, ...more];
  const [crew] = crewsCalled(next, state.work);
  if (!crew) return [...rest, verb];
  const named = 1 + restOfName(crew, more);
  const number = /^\d{1,4}$/.test(rest[named] ?? '') ? 1 : 0;
  const end = named + number;
  return [...rest.slice(0, end), verb, ...rest.slice(end)];
}

function numberIdeas(board: Board, number: number, rest: readonly string[]): Idea[] {
  const { state } = board;
  const task = state.work.tasks.find((one) => one.number === number);
  if (!task) return [{ meant: null, score: 20, instead: words.log.noTask(number) }];
  if (task.hold && isJudged(rest[0])) return [notHere(state, task, 20)];
  // "57 done left" is "57 left done".
  if (isWhole(taskVerbs, rest[0]) && rest.length === 2 && crewsCalled(rest[1]!, state.work)[0]) {
    return numberIdeas(board, number, [rest[1]!, rest[0]!]);
  }
  const calledNext = rest[0] === undefined ? [] : crewsCalled(rest[0], state.work);
  const withCrew = calledNext.flatMap((crew) =>
    taskIdeas(state, crew.id, task, rest.slice(1 + restOfName(crew, rest.slice(1)))),
  );
  const crews = crewsOfTask(state, task);
  const without = crews.flatMap((crew) => taskIdeas(state, crew, task, rest));
  // Of a joint task each crew tells its own: which one spoke was not said. Asking for a start is nobody's own.
  return [...withCrew, ...(crews.length > 1 ? without.map(toChoose) : without)];
}

/** Whether a word passes or fails something. */
function isJudged(word = ''): boolean {
  return /^(pass|fail)/i.test(word);
}

function notHere(state: Board['state'], task: Task, score: number): Idea {
  return { meant: null, score, instead: words.log.holdNotHere(taskLabel(state, task.id)) };
}

function toChoose(idea: Idea): Idea {
  return idea.meant?.kind === 'start-keep-off' ? idea : { ...idea, guess: true };
}

function ofCrew(board: Board, crew: Crew, said: readonly string[]): Idea[] {
  const { state } = board;
  // "left all off", "left one hurt".
  const rest =
    /^(all|one)$/i.test(said[0] ?? '') && isWhole(crewVerbs, said[1]) ? said.slice(1) : said;
  // "left 57 done" and "left done 57" are one.
  const swapped = /^\d+$/.test(rest[1] ?? '') && meanings(taskVerbs, rest[0]).length > 0;
  const [number, ...more] = swapped ? [rest[1]!, rest[0]!, ...rest.slice(2)] : rest;
  const task = state.work.tasks.find((one) => String(one.number) === number);
  const asTask = task ? taskIdeas(state, crew.id, task, more) : [];
  const ideas = [...asTask, ...crewIdeas(board, crew, rest), ...nameIdeas(board, rest, crew)];
  // "left short 8 pins", "left halt": a crew says it of the site.
  if (isWhole(siteVerbs, rest[0]) || /^near$/i.test(rest[0] ?? '')) {
    ideas.push(...siteIdeas(board, rest).map((idea) => ({ ...idea, crew: crew.id })));
  }
  if (ideas.length > 0 || !/^\d{1,4}$/.test(number ?? '') || more.length === 0) return ideas;
  return [{ meant: null, crew: crew.id, score: 20, instead: words.log.noTask(Number(number)) }];
}

/** Tasks by name, with what happened behind it: "bay 10 done", "bay 10 left stopped pin jammed". */
function nameIdeas({ state }: Board, tokens: readonly string[], crew?: Crew): Idea[] {
  const judged = tokens.findIndex((word, place) => place > 0 && isJudged(word));
  const holds =
    judged < 1 ? [] : tasksNamed(state, tokens.slice(0, judged)).tasks.filter(({ hold }) => hold);
  if (holds.length > 0) return holds.map((task, place) => notHere(state, task, 20 - place));
  const end = tokens.findIndex((word, place) => place > 0 && isWhole(taskVerbs, word));
  if (end < 1) return [];
  const { tasks, sure } = tasksNamed(state, tokens.slice(0, end), crew?.id);
  return tasks.flatMap((task, place) => {
    const crews = crew ? [crew.id] : crewsOfTask(state, task);
    const doubtful = !sure || place > 0;
    return crews
      .flatMap((each) => taskIdeas(state, each, task, tokens.slice(end)))
      .map((idea) => (crews.length > 1 ? toChoose(idea) : idea))
      .map((idea) => ({
        ...idea,
        score: idea.score - place,
        guess: idea.guess === true || doubtful,
      }));
  });
}
