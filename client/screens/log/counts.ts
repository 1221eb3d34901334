const spoken =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty'.split(
    ' ',
  );

export type Counts = { readonly some: number; readonly all: number };

/** A count as it is typed or spoken: "7", "seven"; null when it is none. */
export function countIn(word: string | undefined): number | null {
  if (/^\d{1,3}$/.test(word ?? '')) return Number(word);
  const place = spoken.indexOf(word?.toLowerCase() ?? '');
  return place < 0 ? null : place;
}

/** "7/7", "7 of 7", "seven of seven"; null when the words are anything else. */
export function countsIn(words: readonly string[]): Counts | null {
  const [, first, second] = /^(\w+)\s*(?:\/|of)\s*(\w+)$/i.exec(words.join(' ')) ?? [];
  const [some, all] = [countIn(first), countIn(second)];
  return some === null || all === null ? null : { some, all };
}
