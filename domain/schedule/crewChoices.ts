/** A crew for each need, and how many people of it. */
export type Choice = { readonly crews: readonly number[]; readonly people: readonly number[] };

/** What a need can be met by: a crew, and with how many of its people. */
export type Candidate = { readonly crew: number; readonly people: readonly number[] };

/** Tries of an attempt at one more choice that is unlike those before. */
const triesEach = 300;

/**
 * Goes through the ways to give each need a crew of its own, first candidates first, until `take` says that it has
 * enough. `nobody` may meet several needs. Returns false when it was broken off.
 */
export function eachChoice(
  candidates: readonly (readonly Candidate[])[],
  nobody: number,
  take: (choice: Choice) => 'more' | 'enough',
): boolean {
  const crews: number[] = [];
  const people: number[] = [];
  const choose = (need: number): boolean => {
    if (need === candidates.length) {
      return take({ crews, people }) === 'more';
    }
    for (const { crew, people: counts } of candidates[need]!) {
      if (crew !== nobody && crews.includes(crew)) {
        continue;
      }
      for (const count of counts) {
        crews.push(crew);
        people.push(count);
        const goOn = choose(need + 1);
        crews.pop();
        people.pop();
        if (!goOn) {
          return false;
        }
      }
    }
    return true;
  };
  return choose(0);
}

/**
 * Choices spread over the crews, where there are too many to go through them all: each prefers the crews that those
 * before it have used least. `take` says whether it could use the choice. Ends after `attempts`.
 */
export function spreadChoices(
  candidates: readonly (readonly Candidate[])[],
  nobody: number,
  attempts: number,
  take: (choice: Choice) => boolean,
): void {
  const used = new Map<number, number>();
  const count = (crew: number) => used.get(crew) ?? 0;
  for (let attempt = 0; attempt < attempts; attempt += 1) {
    const sorted = candidates.map((all) =>
      [...all].sort((one, other) => count(one.crew) - count(other.crew)),
    );
    let tries = 0;
    eachChoice(sorted, nobody, (choice) => {
      tries += 1;
      const wasTaken = take(choice);
      for (const crew of wasTaken || tries === 1 ? choice.crews : []) {
        used.set(crew, count(crew) + 1);
      }
      return wasTaken || tries >= triesEach ? 'enough' : 'more';
    });
  }
}
