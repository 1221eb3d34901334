/** What can be said about a task. */
export const taskVerbs = {
  started: ['started', 'start', 'begun', 'began'],
  finished: ['done', 'finished', 'finish', 'complete', 'completed'],
  stopped: ['stopped', 'stop', 'held'],
  resumed: ['resumed', 'again', 'going', 'on'],
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
  miss: ['miss', 'near'],
  water: ['water'],
  wind: ['wind'],
  halt: ['halt'],
  undo: ['undo', 'withdraw'],
} as const;

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
  return all.filter((meaning) => vocabulary[meaning]?.some((one) => one.startsWith(typed)));
}
