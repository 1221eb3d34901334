import { expectedCrews, mayWorkAt } from '#domain/progress/plannedCrews.ts';
import type { BuildState, TaskStatus } from '#domain/progress/state.ts';
import { taskLabel } from '#domain/progress/words.ts';
import type { Task } from '#domain/tasks/task.ts';
import { words } from '../../words/words.ts';
import type { Idea } from './reading.ts';
import { meanings, taskVerbs } from './verbs.ts';

/** How likely each word is about a task that stands so: what comes next in its life first. */
const likelihood = {
  'to-come': { started: 30, finished: 22, part: 8, stopped: 6, resumed: 2 },
  'at-work': { finished: 30, stopped: 20, part: 16, started: 4, resumed: 4 },
  stopped: { resumed: 30, finished: 20, part: 10, stopped: 6, started: 8 },
  done: { finished: 10, stopped: 8, resumed: 6, part: 2, started: 2 },
} as const;

type Verb = keyof typeof taskVerbs;

/** The crews that a task without a named crew may be about: those that are to work at it. */
export function crewsOfTask(state: BuildState, task: Task): readonly string[] {
  const { named } = expectedCrews(state.plan, task);
  if (named.length > 0) return named;
  return state.work.crews.filter(({ id }) => mayWorkAt(state, task, id)).map(({ id }) => id);
}

/**
 * What a line may mean once crew and task are known: `rest` is what follows ("done", "stopped pin jammed", "50%").
 * Without anything following, all that is likely for a task that stands so.
 */
export function taskIdeas(
  state: BuildState,
  crew: string,
  task: Task,
  rest: readonly string[],
): Idea[] {
  const standing = state.tasks[task.id];
  const share = standing?.shares.find((one) => one.crew === crew);
  const status = share?.status ?? standing?.status ?? 'to-come';
  const odds = likelihood[status];
  const fits = mayWorkAt(state, task, crew) ? 20 : 0;
  const [first, ...more] = rest;
  const part = partIn(rest);
  if (part !== null) {
    const meant = { kind: 'tell-part', body: { task: task.id, crew, part } } as const;
    return [{ meant, crew, score: fits + odds.part + 20 }];
  }
  const known = meanings(taskVerbs, first);
  // A word that nobody knows says nothing: what is likely is offered, to be chosen.
  const verbs = known.length === 0 ? openVerbs[status] : known;
  const speaker = more[0]?.toLowerCase() === 'by' ? more.slice(1).join(' ') : '';
  const ideas = verbs
    .filter((verb) => verb !== 'part')
    .map((verb): Idea => {
      const idea = ideaOf(state, crew, task, verb, known.length === 0 ? '' : more.join(' '));
      // Only a stop takes words of its own; what else is typed after a report was not understood.
      const over = verb !== 'stopped' && more.length > 0 && !isFiller(more);
      const by = over && speaker !== '' ? { by: speaker } : {};
      const guess = over && speaker === '';
      return { ...idea, ...by, crew, score: fits + odds[verb], guess, unsaid: known.length === 0 };
    });
  const asked = askToStart(task, verbs, fits + odds.started);
  const guess = more.length > 0 && !isFiller(more) && speaker === '';
  return [...ideas, ...asked.map((idea) => ({ ...idea, guess, unsaid: known.length === 0 }))];
}

/** Words that add nothing: "going on", "done now". */
function isFiller(rest: readonly string[]): boolean {
  return rest.every((word) =>
    ['on', 'now', 'again', 'please', 'over', 'out', 'with', 'it'].includes(word.toLowerCase()),
  );
}

/** What is offered when nothing was said yet about a task that stands so. */
const openVerbs = {
  'to-come': ['started', 'finished'],
  'at-work': ['finished', 'stopped'],
  stopped: ['resumed', 'finished'],
  done: ['stopped'],
} as const satisfies Record<TaskStatus, readonly Verb[]>;

function ideaOf(
  state: BuildState,
  crew: string,
  task: Task,
  verb: Exclude<Verb, 'part'>,
  why: string,
): Pick<Idea, 'meant' | 'instead'> {
  const of = { task: task.id, crew };
  switch (verb) {
    case 'started':
      return { meant: { kind: 'tell-started', body: of } };
    case 'finished':
      // A hold is only ever passed by an inspection, however it is told over the radio.
      if (task.hold)
        return { meant: null, instead: words.log.holdNotHere(taskLabel(state, task.id)) };
      return { meant: { kind: 'tell-finished', body: of } };
    case 'stopped':
      return { meant: { kind: 'tell-stopped', body: { ...of, why } } };
    case 'resumed':
      return { meant: { kind: 'tell-resumed', body: of } };
  }
}

/** A keep-off task is asked for, and refused while anybody may stand in its way; that it ran all the same can be told. */
function askToStart(task: Task, verbs: readonly Verb[], score: number): Idea[] {
  if (!task.keepOff || !verbs.includes('started')) return [];
  return [{ meant: { kind: 'start-keep-off', body: { task: task.id } }, score: score + 1 }];
}

/** "half", "quarter", "50%", "part 50": the share that is done, 0 to 1; null when none is said. */
function partIn(rest: readonly string[]): number | null {
  const [first = '', second = ''] = rest.map((word) => word.toLowerCase());
  if (first === 'half') return 0.5;
  if (first === 'quarter') return 0.25;
  const said = /^(\d{1,3})%?$/.exec(first === 'part' ? second : first.endsWith('%') ? first : '');
  const share = said ? Number(said[1]) / 100 : Number.NaN;
  return share >= 0 && share <= 1 ? share : null;
}
