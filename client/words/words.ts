import { chiefWords } from './chiefWords.ts';
import { commanderWords } from './commanderWords.ts';
import { drawingWords } from './drawingWords.ts';
import { haltWords } from './haltWords.ts';
import { inspectorWords } from './inspectorWords.ts';
import { jobWords } from './jobWords.ts';
import { logWords } from './logWords.ts';
import { saidWords } from './saidWords.ts';
import { shellWords } from './shellWords.ts';

/** Everything the pages say, in one catalogue. A section per screen or drawing; parts with numbers are functions. */
export const words = {
  ...shellWords,
  ...drawingWords,
  ...commanderWords,
  chief: chiefWords,
  ...saidWords,
  ...haltWords,
  ...jobWords,
  ...logWords,
  ...inspectorWords,
} as const;
