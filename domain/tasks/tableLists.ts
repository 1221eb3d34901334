import { longestMinutes } from './checkWork.ts';
import { idForm, idRule, readList } from './tableCells.ts';
import type { TableRow } from './tableFile.ts';

/** Reads cells that hold lists of pairs; words at fault are noted in their row and left out. Minutes throughout. */

type Counted = { readonly id: string; readonly count: number };
type Spell = { readonly from: number; readonly to: number };

/** Ids with counts (`jack:2 winch`); an id alone counts one. */
export function readCounts(row: TableRow, column: string, most: number): Counted[] {
  const found = readList(row, column).flatMap((word): Counted[] => {
    const [id = '', count = '1', ...rest] = word.split(':');
    const number = /^\d{1,4}$/.test(count) ? Number(count) : 0;
    if (idForm.test(id) && rest.length === 0 && number >= 1 && number <= most) {
      return [{ id, count: number }];
    }
    row.fault(column, `an id of ${idRule}, a colon and a number from 1 to ${most}`, word);
    return [];
  });
  for (const [at, { id }] of found.entries()) {
    if (found.findIndex((one) => one.id === id) !== at) {
      row.fault(column, 'each once', `${id} twice`);
    }
  }
  return found;
}

/** Rests in order and apart, of the whole crew or of so many (`180-210 4:420-440`). */
export function readRests(row: TableRow, column: string): (Spell & { people?: number })[] {
  let last = 0;
  return readList(row, column).flatMap((word) => {
    const [time = '', some, ...rest] = word.split(':').reverse();
    const spell = spellOf(time);
    const people = /^\d{1,3}$/.test(some ?? '1') ? Number(some ?? 1) : 0;
    if (!spell || spell.from < last || people < 1 || people > 500 || rest.length > 0) {
      const expected =
        'minutes from-to such as 180-210, or of 4 people 4:180-210, one after the other';
      row.fault(column, expected, word);
      return [];
    }
    last = spell.to;
    return [some === undefined ? spell : { ...spell, people }];
  });
}

/** People from a time on (`240:5 300:7`), in order of time. */
export function readSteps(row: TableRow, column: string): { from: number; people: number }[] {
  let last = -1;
  return readList(row, column).flatMap((word) => {
    const [from, people, ...rest] = word.split(':');
    const step = {
      from: minutesOf(from),
      people: /^\d{1,3}$/.test(people ?? '') ? Number(people) : 501,
    };
    if (rest.length > 0 || !(step.from > last) || step.people > 500) {
      row.fault(
        column,
        'a time in minutes, a colon and people, such as 240:5, in order of time',
        word,
      );
      return [];
    }
    last = step.from;
    return [step];
  });
}

/** People lent to other crews for a while (`brace:2:60-120`). */
export function readLent(row: TableRow, column: string) {
  return readList(row, column).flatMap((word) => {
    const [crew = '', people = '', time = '', ...rest] = word.split(':');
    const spell = spellOf(time);
    const count = /^\d{1,3}$/.test(people) ? Number(people) : 0;
    if (!idForm.test(crew) || !spell || count < 1 || count > 500 || rest.length > 0) {
      row.fault(column, 'a crew, people and minutes from-to, such as brace:2:60-120', word);
      return [];
    }
    return [{ crew, people: count, ...spell }];
  });
}

function spellOf(word: string): Spell | null {
  const [from, to, ...rest] = word.split('-');
  const spell = { from: minutesOf(from), to: minutesOf(to) };
  return rest.length === 0 && spell.from < spell.to ? spell : null;
}

function minutesOf(text = ''): number {
  const minutes = /^(\d+(\.\d*)?|\.\d+)$/.test(text) ? Number(text) : Number.NaN;
  return minutes <= longestMinutes ? minutes : Number.NaN;
}
