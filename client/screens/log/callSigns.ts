import type { Crew, Work } from '#domain/tasks/work.ts';

/** Crews that a typed word may mean: by their id or any word of their name, from its first letter on. */
export function crewsCalled(word: string, work: Work): readonly Crew[] {
  const typed = word.toLowerCase();
  if (!/^\p{L}/u.test(typed)) return [];
  const exact = work.crews.filter((crew) => crew.id.toLowerCase() === typed);
  if (exact.length > 0) return exact;
  const first = work.crews.filter((crew) => crew.name.toLowerCase().startsWith(typed));
  const others = work.crews.filter(
    (crew) => !first.includes(crew) && wordsOf(crew).some((one) => one.startsWith(typed)),
  );
  return [...first, ...others];
}

/** How many of the following words go on with the crew's name: "left girder 57" has one after "left". */
export function restOfName(crew: Crew, words: readonly string[]): number {
  const known = wordsOf(crew);
  const end = words.findIndex((word) => word.length < 3 || !known.includes(word.toLowerCase()));
  return end < 0 ? words.length : end;
}

/** The fewest first letters of each crew's name that mean no other crew, by crew id. */
export function callSigns(work: Work): ReadonlyMap<string, string> {
  return new Map(
    work.crews.map((crew) => {
      const name = crew.name.toLowerCase();
      for (let length = 1; length < name.length; length += 1) {
        const short = name.slice(0, length);
        if (short.endsWith(' ')) continue;
        const [first, second] = crewsCalled(short, work);
        const alone = second === undefined || !second.name.toLowerCase().startsWith(short);
        if (first === crew && alone) return [crew.id, short];
      }
      return [crew.id, crew.id.toLowerCase()];
    }),
  );
}

function wordsOf(crew: Crew): string[] {
  return crew.name.toLowerCase().split(/[^\p{L}\p{N}]+/u);
}
