import { afterWords } from './afterWords.ts';
import { chiefWords } from './chiefWords.ts';
import { choiceWords } from './choiceWords.ts';
import { commanderWords } from './commanderWords.ts';
import { crewsWords } from './crewsWords.ts';
import { drawingWords } from './drawingWords.ts';
import { forecastWords } from './forecastWords.ts';
import { groundWords } from './groundWords.ts';
import { haltWords } from './haltWords.ts';
import { hoursWords } from './hoursWords.ts';
import { inspectorWords } from './inspectorWords.ts';
import { jobWords } from './jobWords.ts';
import { kitWords } from './kitWords.ts';
import { launchWords } from './launchWords.ts';
import { leaderWords } from './leaderWords.ts';
import { logWords } from './logWords.ts';
import { newBuildWords } from './newBuildWords.ts';
import { planWords } from './planWords.ts';
import { saidWords } from './saidWords.ts';
import { shellWords } from './shellWords.ts';
import { storesWords } from './storesWords.ts';
import { workWords } from './workWords.ts';

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
  ...leaderWords,
  ...groundWords,
  ...choiceWords,
  ...launchWords,
  ...workWords,
  ...crewsWords,
  ...hoursWords,
  ...storesWords,
  ...kitWords,
  ...planWords,
  ...forecastWords,
  ...afterWords,
  ...newBuildWords,
} as const;
