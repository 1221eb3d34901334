import type { Box } from './columnsLayout.ts';

/** What a box of the crew columns says, and where in it. Pixels, from the top of the box. */
export type BoxText = {
  readonly text: string;
  /** The text starts so far down: what lies over the box would hide it. */
  readonly offset: number;
  /** Lines there is room for; none where the box is too low for any. */
  readonly lines: number;
  /** One line of small type. */
  readonly small: boolean;
  /** Whether the count of people fits beside it. */
  readonly people: boolean;
};

/** A stretch of the board that something else covers. */
export type Cover = { readonly top: number; readonly bottom: number };

type Place = { readonly top: number; readonly height: number; readonly width: number };

export const lineHeight = 17;
const smallLine = 11;

// Widths of a letter of the boxes' type, a little more than on average.
const letter = 6.1;
const smallLetter = 5.2;
const heavier = 1.14;

/** Edges and margins of a box beside its text, and the count of people at the end of the first line. */
const edges = 20;
const peopleWidth = 12;

/**
 * The name where it fits into the lines there are, with whole words. Else the number comes first, because that is what
 * is said over a radio and what tells "Nose section 3" from "Nose section 4" when the end is cut; side by side the
 * number stands alone.
 */
export function boxText(
  box: Pick<Box, 'name' | 'number' | 'lanes' | 'critical'>,
  { top, height, width }: Place,
  covers: readonly Cover[],
): BoxText {
  const { offset, room } = freeStretch(top, height, covers);
  const small = room < lineHeight;
  const lines = small ? (room >= smallLine ? 1 : 0) : Math.floor(room / lineHeight);
  const size = (small ? smallLetter : letter) * (box.critical ? heavier : 1);
  const wide = (width - edges) / size;
  const name = shortName(box.name);
  const beside = wide - peopleWidth / size;
  if (wraps(name, wide, beside) <= lines) return { text: name, offset, lines, small, people: true };
  const number = String(box.number);
  const text = box.lanes > 1 ? number : `${number} ${name}`;
  return { text, offset, lines, small, people: number.length <= beside };
}

/** The first stretch of a box that nothing covers and that holds a line; else the first that is free at all. */
function freeStretch(top: number, height: number, covers: readonly Cover[]) {
  const bottom = top + height;
  const over = covers
    .filter((one) => one.top < bottom && one.bottom > top)
    .toSorted((a, b) => a.top - b.top);
  let from = top;
  let best = { offset: 0, room: 0 };
  for (const { top: end, bottom: next } of [...over, { top: bottom, bottom }]) {
    const room = end - from;
    if (room >= lineHeight) return { offset: from - top, room };
    if (room > best.room) best = { offset: from - top, room };
    from = Math.max(from, next);
  }
  return best;
}

/** How many lines a text takes, in letters, where the first may be shorter; no number of them where a word is too long. */
function wraps(text: string, wide: number, first: number): number {
  const words = text.split(' ');
  if (words.some((word) => word.length > wide)) return Number.POSITIVE_INFINITY;
  let lines = 1;
  let left = first;
  let begun = false;
  for (const word of words) {
    const needs = word.length + (begun ? 1 : 0);
    if (needs > left) {
      lines += 1;
      left = wide - word.length;
    } else {
      left -= needs;
    }
    begun = true;
  }
  return lines;
}

/** In a column a name is short: what follows its first comma stands in the task's own words, one touch away. */
function shortName(name: string): string {
  return name.split(',')[0] ?? name;
}
