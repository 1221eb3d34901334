import type { TaskTemplate } from '../../kit/order.ts';

/**
 * The templates of a kit that a task may have been made from, by its id: `bay-3-left` from `bay-{bay}-{side}`. Several
 * where the kit makes ids alike for both banks; none for a task that a leader added. The most literal pattern wins.
 */
export function templatesOf(order: readonly TaskTemplate[], task: string): TaskTemplate[] {
  const fitting = order.filter(({ makes }) => fits(makes, task));
  const literal = Math.max(0, ...fitting.map(({ makes }) => literalLength(makes)));
  return fitting.filter(({ makes }) => literalLength(makes) === literal);
}

/** Literal pieces in their order, with something between any two: no pattern language, ids hold no such letters. */
function fits(makes: string, id: string): boolean {
  const pieces = makes.split(/\{[a-z-]+\}/);
  if (pieces.length === 1) return makes === id;
  const first = pieces[0]!;
  const last = pieces.at(-1)!;
  if (!id.startsWith(first) || !id.endsWith(last)) return false;
  let at = first.length;
  for (const piece of pieces.slice(1, -1)) {
    // A placeholder stands for at least one letter.
    const found = id.indexOf(piece, at + 1);
    if (found < 0) return false;
    at = found + piece.length;
  }
  return id.length - last.length > at;
}

function literalLength(makes: string): number {
  return makes.replace(/\{[a-z-]+\}/g, '').length;
}
