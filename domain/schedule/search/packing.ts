import type { Problem } from './problem.ts';

/**
 * Several resources side by side in one 32-bit word, each with a guard bit above it that is always set in what is free.
 * Subtracting a demand clears a guard bit exactly where too little is free, so one subtraction and one mask ask all
 * resources of a word at once.
 */
export type Packing = {
  /** Words per moment. */
  readonly words: number;
  /** Guard bits, per word. */
  readonly guards: Int32Array;
  /** Everything free, guards set, per word. */
  readonly full: Int32Array;
  /** Task by task, `words` numbers each. */
  readonly demands: Int32Array;
  /** Per resource: its word and its lowest bit. */
  readonly word: Int32Array;
  readonly shift: Int32Array;
};

/** Packs the resources in the order given, starting a new word when one does not fit any more. */
export function pack(problem: Problem): Packing {
  const { tasks, resources, capacities, demands } = problem;
  const word = new Int32Array(resources);
  const shift = new Int32Array(resources);
  let words = 1;
  let used = 0;
  for (let resource = 0; resource < resources; resource++) {
    const width = 33 - Math.clz32(capacities[resource]!);
    if (used + width > 32) {
      words += 1;
      used = 0;
    }
    word[resource] = words - 1;
    shift[resource] = used;
    used += width;
  }
  const guards = new Int32Array(words);
  const full = new Int32Array(words);
  const packed = new Int32Array(tasks * words);
  for (let resource = 0; resource < resources; resource++) {
    const at = word[resource]!;
    const width = 33 - Math.clz32(capacities[resource]!);
    const guard = 1 << (shift[resource]! + width - 1);
    guards[at]! |= guard;
    full[at]! |= guard | (capacities[resource]! << shift[resource]!);
    for (let task = 0; task < tasks; task++) {
      packed[task * words + at]! |= demands[task * resources + resource]! << shift[resource]!;
    }
  }
  return { words, guards, full, demands: packed, word, shift };
}
