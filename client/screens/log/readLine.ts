import type { BuildState } from '#domain/progress/state.ts';
import { entrySentence } from '../../words/entryWords.ts';
import { clock } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { cutLine } from './cutLine.ts';
import { workOfCrew } from './likely.ts';
import { namedIdeas } from './namedIdeas.ts';
import type { Board, Idea, Reading } from './reading.ts';
import { siteIdeas } from './siteIdeas.ts';
import { taskIdeas } from './taskIdeas.ts';
import { warningOf } from './warning.ts';

/** As many ways to understand a line as a person can look over while somebody waits on the radio. */
const most = 7;
/** People come to the site some time before the planned start. */
const dayBefore = 6 * 3_600_000;

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
  // A time of day that is not yet was yesterday's; where nothing was built yesterday it is a slip of the pen.
  const early = at !== null && at < Date.parse(state.start) - dayBefore;
  const readings = ideas.map((idea): Reading & { readonly unsaid: boolean } => {
    const { score, crew, unsaid = false } = idea;
    const guess = unsaid || idea.guess === true;
    const meant = early ? null : idea.meant;
    const sentence = early
      ? words.log.notYet(clock(at, state.zone))
      : (idea.instead ?? (meant ? entrySentence(state, meant) : ''));
    const warning = warningOf(state, meant, at ?? now);
    const speaker = by ?? idea.by ?? chiefOf(state, crew);
    return { sentence, meant, score, at, by: speaker, warning, guess, unsaid };
  });
  const seen = new Set<string>();
  return (
    readings
      .toSorted((a, b) => b.score - a.score)
      // What nobody said is not offered where it would break a rule, or could not be sent.
      .filter(({ unsaid, warning, meant }) => !unsaid || (warning === null && meant !== null))
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
