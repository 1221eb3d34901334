const spoken =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty'.split(
    ' ',
  );

export type Counts = { readonly some: number; readonly all: number };

/** So many people or parts can be told at once. */
const mostCounted = 500;

/** A count as it is typed or spoken: "7", "seven"; null when it is none, or more than can be told: "1328" is a time. */
export function countIn(word: string | undefined, most = mostCounted): number | null {
  if (/^\d+$/.test(word ?? '')) return Number(word) <= most ? Number(word) : null;
  const place = spoken.indexOf(word?.toLowerCase() ?? '');
  return place < 0 ? null : place;
}

/** "7/7", "7 of 7", "seven of seven"; null when the words are anything else. */
export function countsIn(words: readonly string[]): Counts | null {
  const [, first, second] = /^(\w+)\s*(?:\/|of)\s*(\w+)$/i.exec(words.join(' ')) ?? [];
  const [some, all] = [countIn(first), countIn(second)];
  return some === null || all === null ? null : { some, all };
}
