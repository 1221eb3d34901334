/** What can be said about a task. */
export const taskVerbs = {
  started: ['started', 'start', 'starts', 'starting', 'begun', 'began', 'begin'],
  finished: ['done', 'finished', 'finish', 'complete', 'completed'],
  stopped: ['stopped', 'stop', 'held'],
  resumed: ['resumed', 'resume', 'again', 'going', 'go', 'goes', 'on', 'continue', 'continues'],
  part: ['part', 'half', 'quarter'],
} as const;

/** What can be said about a crew. */
export const crewVerbs = {
  strength: ['fit', 'strength'],
  off: ['off'],
  down: ['down', 'acknowledged', 'acknowledge'],
  relief: ['relief', 'relieved'],
  hurt: ['hurt', 'injured'],
} as const;

/** What can be said about the site, without a crew first. */
export const siteVerbs = {
  load: ['load', 'truck'],
  clear: ['clear', 'seen'],
  short: ['short', 'missing'],
  miss: ['miss'],
  water: ['water'],
  wind: ['wind'],
  halt: ['halt'],
  undo: ['undo', 'withdraw'],
} as const;

/** What a slip of the finger must not say: only the whole word means it. */
const wholeOnly: ReadonlySet<string> = new Set(['halt', 'undo', 'miss']);

type Vocabulary = Readonly<Record<string, readonly string[]>>;

/** The meanings that a typed word may have: a whole word means one thing, its first letters may mean several. */
export function meanings<Words extends Vocabulary>(
  vocabulary: Words,
  word: string | undefined,
): readonly (keyof Words & string)[] {
  const typed = word?.toLowerCase() ?? '';
  if (typed === '') return [];
  const all = Object.keys(vocabulary) as (keyof Words & string)[];
  const whole = all.filter((meaning) => vocabulary[meaning]?.includes(typed));
  if (whole.length > 0) return whole;
  return all.filter(
    (meaning) =>
      !wholeOnly.has(meaning) && vocabulary[meaning]?.some((one) => one.startsWith(typed)),
  );
}

/** Whether a word is one of these in full, and not only its first letters. */
export function isWhole(vocabulary: Vocabulary, word: string | undefined): boolean {
  const typed = word?.toLowerCase() ?? '';
  return Object.values(vocabulary).some((known) => known.includes(typed));
}
