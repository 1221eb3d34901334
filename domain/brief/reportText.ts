import type { SituationReport } from './situationReport.ts';

/** What every sheet says: the program decides nothing. */
export const planningAid =
  'Planning aid. The manual of the equipment on site, local codes and the qualified person in charge decide.';

/** The report as plain text, one lettered line each, to read over a radio or to copy. */
export function reportText({ lines }: SituationReport): string {
  const lettered = lines.map(({ title, text }, index) => `${letterOf(index)}. ${title}: ${text}`);
  return `${['Situation report', ...lettered, planningAid].join('\n')}\n`;
}

/** A, B, C ... as report lines are called on the net. */
function letterOf(index: number): string {
  return String.fromCharCode('A'.charCodeAt(0) + index);
}
