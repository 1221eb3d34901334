import { isSame } from '#domain/progress/rules/withdrawal.ts';
import type { BuildState } from '#domain/progress/state.ts';
import type { Load } from '#domain/tasks/work.ts';
import { words } from '../../words/words.ts';
import { countIn } from './counts.ts';
import { nextKeepOff } from './likely.ts';
import type { Board, Idea } from './reading.ts';
import { meanings, siteVerbs } from './verbs.ts';

/** What a line about the site may mean: loads, banks, water, wind, a near miss, a halt. */
export function siteIdeas(board: Board, tokens: readonly string[]): Idea[] {
  const [first, ...rest] = isStopCall(tokens) ? ['halt'] : withoutBank(tokens);
  return meanings(siteVerbs, first).flatMap((verb) => ideasOf(board, verb, rest));
}

/** Metres a second; more is a slip of the finger. */
const strongestWind = 80;

/** "stop", "stop, stop, stop": anybody's call to everybody; "stop 57" is about a task. */
function isStopCall(tokens: readonly string[]): boolean {
  return tokens.every((word) => /^(stop|all|everyone|everybody)$/i.test(word)) && isStop(tokens[0]);
}

function isStop(word: string | undefined): boolean {
  return word?.toLowerCase() === 'stop';
}

/** "near bank clear Ames 18" is "clear near Ames 18", and "near miss" is no bank. */
function withoutBank(tokens: readonly string[]): readonly string[] {
  const [bank = '', ...rest] = tokens.filter((word) => word.toLowerCase() !== 'bank');
  const [next = '', ...more] = rest;
  if (!/^(near|far)$/i.test(bank)) return tokens;
  if (/^miss$/i.test(next)) return rest;
  return /^(seen|clear)$/i.test(next) ? ['clear', bank, ...withoutClear(more)] : tokens;
}

function withoutClear(rest: readonly string[]): readonly string[] {
  return rest[0]?.toLowerCase() === 'clear' ? rest.slice(1) : rest;
}

function ideasOf(board: Board, verb: keyof typeof siteVerbs, rest: readonly string[]): Idea[] {
  const { state } = board;
  switch (verb) {
    case 'load':
      return loadIdeas(state, rest);
    case 'clear':
      return clearIdeas(state, rest);
    case 'short':
      return shortIdeas(state, rest);
    case 'miss': {
      // It is never erased: it says what nearly happened, or it is not sent.
      const what = rest.join(' ');
      return what === ''
        ? [{ meant: null, score: 35, instead: words.log.missNeeds }]
        : [{ meant: { kind: 'tell-near-miss', body: { what } }, score: 35 }];
    }
    case 'water':
      return waterIdeas(rest);
    case 'wind':
      return /^\d{1,2}(\.\d)?$/.test(rest[0] ?? '') && Number(rest[0]) <= strongestWind
        ? [{ meant: { kind: 'tell-wind', body: { speed: Number(rest[0]) } }, score: 40 }]
        : [];
    case 'halt':
      return [{ meant: { kind: 'halt', body: { why: rest.join(' ') } }, score: 60 }];
    case 'undo':
      return undoIdeas(board, rest);
  }
}

/** Loads by number in the order of work, or by a word of their name: "load 5 in", "load deck late 12 bogged". */
function loadIdeas(state: BuildState, said: readonly string[]): Idea[] {
  const unnamed = [...arrivals, ...lates].includes(said[0]?.toLowerCase() ?? '');
  const [which, verb, ...rest] = unnamed ? [undefined, ...said] : said;
  const open = state.work.loads.filter(({ id }) => state.loads[id]?.status !== 'in');
  const called = which === undefined ? open : loadsCalled(state.work.loads, which);
  const typed = verb?.toLowerCase() ?? '';
  // A name that several loads bear, or a load of which nothing was said: that has to be chosen.
  const guess = called.length > 1 || verb === undefined;
  return called.flatMap((load): Idea[] => {
    const came: Idea = {
      meant: { kind: 'tell-load-in', body: { load: load.id } },
      score: 40,
      guess,
    };
    if (verb === undefined || arrivals.includes(typed)) return [came];
    if (!lates.includes(typed)) return [];
    const minutes = countIn(rest[0], mostMinutesLate);
    if (minutes === null) return [{ meant: null, score: 40, instead: words.log.lateNeeds }];
    const body = { load: load.id, minutes, why: rest.slice(isMinutes(rest[1]) ? 2 : 1).join(' ') };
    return [{ meant: { kind: 'tell-load-late', body }, score: 40, guess }];
  });
}

/** Two days: what is later than that does not come. */
const mostMinutesLate = 2880;
const arrivals = ['in', 'here', 'arrived', 'i'];
const lates = ['late', 'l'];

function isMinutes(word: string | undefined): boolean {
  return /^min(ute)?s?$/i.test(word ?? '');
}

function loadsCalled(loads: readonly Load[], which: string): readonly Load[] {
  const typed = which.toLowerCase();
  const byPlace = /^\d+$/.test(typed) ? loads[Number(typed) - 1] : undefined;
  if (byPlace) return [byPlace];
  return loads.filter(
    ({ id, name }) => id.toLowerCase() === typed || name.toLowerCase().includes(typed),
  );
}

/** "clear near Ames 18", with the number of the keep-off task where it is not the next one. */
function clearIdeas(state: BuildState, rest: readonly string[]): Idea[] {
  const said = rest[0]?.toLowerCase() === 'clear' ? rest.slice(1) : rest;
  const [bankWord = '', ...more] = said.filter((word) => word.toLowerCase() !== 'bank');
  const banks = (['near', 'far'] as const).filter((bank) =>
    bank.startsWith(bankWord.toLowerCase()),
  );
  const isNumber = (word: string): boolean => /^\d+$/.test(word) || countIn(word) !== null;
  const [first, second] = more.filter(isNumber);
  const name = more.filter((word) => !isNumber(word) && !isFiller(word)).join(' ');
  const number = countIn(second, Number.MAX_SAFE_INTEGER);
  const named = state.work.tasks.find((task) => task.keepOff && task.number === number);
  const task = named ?? nextKeepOff(state);
  if (!task) return [{ meant: null, score: 40, instead: words.log.noKeepOff }];
  const people = countIn(first);
  return banks.map((bank): Idea => {
    if (name === '' || people === null) {
      return { meant: null, score: 35, instead: words.log.clearNeeds(bank) };
    }
    const body = { task: task.id, bank, name, people };
    return { meant: { kind: 'tell-clear', body }, score: 45 };
  });
}

function isFiller(word: string): boolean {
  return ['people', 'by', 'for'].includes(word.toLowerCase());
}

/** "short 8 pins", "short 8 pins for 57". */
function shortIdeas(state: BuildState, rest: readonly string[]): Idea[] {
  const [first, ...more] = rest;
  const count = countIn(first);
  if (count === null || more.length === 0) {
    return [{ meant: null, score: 30, instead: words.log.shortNeeds }];
  }
  const forAt = more.findIndex((word) => word.toLowerCase() === 'for');
  const task = state.work.tasks.find(
    ({ number }) => forAt > 0 && String(number) === more[forAt + 1],
  );
  const part = more.slice(0, task ? forAt : undefined).join(' ');
  const body = { part, count, ...(task && { task: task.id }) };
  return [{ meant: { kind: 'tell-short', body }, score: 40 }];
}

/** Centimetres an hour; more is a slip of the finger. */
const fastestWater = 500;

/** "water 4", "water -2 level 1.35": centimetres an hour, falling with a minus. */
function waterIdeas(rest: readonly string[]): Idea[] {
  const falls = rest.some((word) => /^(falling|falls|down)$/i.test(word));
  const [typed = '', levelWord = '', level = ''] = rest.filter(
    (word) => !/^(cm|rising|rises|up|falling|falls|down|an|hour)/i.test(word),
  );
  const rise = falls && /^\d/.test(typed) ? `-${typed}` : typed;
  if (!/^[+-]?\d{1,3}$/.test(rise) || Math.abs(Number(rise)) > fastestWater) return [];
  const read = /^\d+(\.\d+)?$/.exec(levelWord.toLowerCase() === 'level' ? level : '');
  const body = { rise: Number(rise) / 100, level: read ? Number(read[0]) : null };
  return [{ meant: { kind: 'tell-water', body }, score: 40 }];
}

/** "undo", "undo 231 wrong bay": the last report of the log keeper, or the one of that number. */
function undoIdeas({ state, you }: Board, [number, ...why]: readonly string[]): Idea[] {
  const last = state.tells.findLast(
    ({ by, entry }) => isSame(by, you) && !state.withdrawn.includes(entry),
  );
  const entry = number === undefined ? last?.entry : Number(number);
  if (entry === undefined || !Number.isInteger(entry) || entry < 1) {
    return [{ meant: null, score: 30, instead: words.log.nothingToUndo }];
  }
  const body = { entry, why: why.join(' ') || words.log.undoWhy };
  return [{ meant: { kind: 'withdraw', body }, score: 50 }];
}
