import { shellWords } from './shellWords.ts';

/** Everything the pages say, in one catalogue. A section per screen or drawing; parts with numbers are functions. */
export const words = {
  ...shellWords,
} as const;
