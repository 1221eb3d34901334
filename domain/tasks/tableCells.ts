import { longestMinutes } from './checkWork.ts';
import type { TableRow } from './tableFile.ts';
import type { Minutes, Need, People } from './task.ts';

export const idForm = /^[A-Za-z0-9._-]{1,64}$/;
const numberForm = /^[+-]?(\d+(\.\d*)?|\.\d+)$/;
const peopleForm = /^(\d{1,3})(?:-(\d{1,3})-(\d{1,3}))?$/;
export const idRule = 'up to 64 letters, digits, ".", "_" or "-"';
const peopleRule = 'a number to 500, or least-usual-most such as 4-6-8';

/** Reads one cell each; null stands for a cell at fault, which the row has then noted. */

export function readId(row: TableRow, column: string): string | null {
  const text = row.cell(column);
  if (idForm.test(text)) {
    return text;
  }
  row.fault(column, idRule);
  return null;
}

/** A name in words; the id where the cell is blank. */
export function readName(row: TableRow, column: string, id: string, longest: number): string {
  const text = row.cell(column) || id;
  if (text.length > longest) {
    row.fault(column, `at most ${longest} letters`, `${text.length} letters`);
  }
  return text;
}

/** The words of a list, split at blanks, `;` and `,`. */
export function readList(row: TableRow, column: string): string[] {
  return row
    .cell(column)
    .split(/[\s;,]+/)
    .filter((word) => word !== '');
}

/** A list of ids, each once. */
export function readIds(row: TableRow, column: string): string[] {
  const ids = readList(row, column);
  for (const [at, id] of ids.entries()) {
    if (!idForm.test(id)) {
      row.fault(column, `ids of ${idRule}`, id);
    } else if (ids.indexOf(id) !== at) {
      row.fault(column, 'each once', `${id} twice`);
    }
  }
  return ids;
}

export function readYes(row: TableRow, column: string): boolean {
  const text = row.cell(column).toLowerCase();
  if (['yes', 'y', 'true', '1', 'x'].includes(text)) {
    return true;
  }
  if (!['no', 'n', 'false', '0', ''].includes(text)) {
    row.fault(column, 'yes or no');
  }
  return false;
}

/** Minutes from `least` up to two years; `blank` where the cell is blank. */
export function readMinutes<Blank>(
  row: TableRow,
  column: string,
  least: number,
  blank: Blank,
): number | Blank | null {
  const text = row.cell(column);
  if (text === '') {
    return blank;
  }
  const minutes = numberForm.test(text) ? Number(text) : Number.NaN;
  if (minutes >= least && minutes <= longestMinutes) {
    return minutes;
  }
  row.fault(column, `minutes from ${least} to ${longestMinutes}`);
  return null;
}

/** `likely` with both of `quick` and `slow` or neither, in rising order. */
export function readEstimate(row: TableRow): Minutes | null {
  const likely = readMinutes(row, 'likely', 0, undefined);
  const quick = readMinutes(row, 'quick', 0, undefined);
  const slow = readMinutes(row, 'slow', 0, undefined);
  if (likely === undefined) {
    row.fault('likely', 'minutes');
  }
  if (quick === null || likely === null || slow === null || likely === undefined) {
    return null;
  }
  if (quick === undefined && slow === undefined) {
    return { quick: likely, likely, slow: likely };
  }
  if (quick === undefined) {
    row.fault('quick', 'minutes, since slow is given (or neither)');
    return null;
  }
  if (slow === undefined) {
    row.fault('slow', 'minutes, since quick is given (or neither)');
    return null;
  }
  if (quick > likely) {
    row.fault('quick', `at most likely, ${likely}`);
  }
  if (slow < likely) {
    row.fault('slow', `at least likely, ${likely}`);
  }
  return { quick, likely, slow };
}

function parsePeople(text: string): People | null {
  const match = peopleForm.exec(text);
  if (!match) {
    return null;
  }
  const least = Number(match[1]);
  const usual = Number(match[2] ?? match[1]);
  const most = Number(match[3] ?? match[1]);
  return least <= usual && usual <= most && most <= 500 ? { least, usual, most } : null;
}

/**
 * Who is wanted. Crews with people (`left:4 brace:2`) make a joint task, one need each; crews without people are
 * those of which any one can, with the people of the row; no crews is any crew. Blank people are one person.
 */
export function readNeeds(row: TableRow): Need[] | null {
  const text = row.cell('people');
  const people = parsePeople(text || '1');
  if (!people) {
    row.fault('people', peopleRule);
  }
  const words = readList(row, 'crews');
  const joint = words.filter((word) => word.includes(':'));
  if (joint.length > 0 && joint.length < words.length) {
    row.fault('crews', 'people with every crew or with none');
    return null;
  }
  if (joint.length === 0) {
    const anyOf = readIds(row, 'crews');
    return people && [{ anyOf, people }];
  }
  const needs = joint.map((word): Need | null => {
    const [crew = '', count = '', ...rest] = word.split(':');
    const wanted = rest.length === 0 && idForm.test(crew) ? parsePeople(count) : null;
    if (!wanted) {
      row.fault('crews', `a crew, a colon and ${peopleRule}`, word);
    }
    return wanted && { anyOf: [crew], people: wanted };
  });
  const good = needs.filter((need) => need !== null);
  if (good.length < needs.length) {
    return null;
  }
  const crews = good.map((need) => need.anyOf[0]);
  if (new Set(crews).size < crews.length) {
    row.fault('crews', 'each crew once');
  }
  const sum = good.reduce((total, need) => total + need.people.usual, 0);
  if (people && text !== '' && people.usual !== sum) {
    row.fault('people', `nothing, or ${sum} as the crews add up to`);
  }
  return good;
}
