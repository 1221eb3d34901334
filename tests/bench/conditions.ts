import { conditions, conditionTable, gaps } from './conditions/table.ts';

// Prints the time of a full build of a short, a middle and a long gap with the demo kit under each condition: as
// planned, at even chance and at eight in ten, and by how much even chance is later than by day. Run: npm run --silent bench:conditions

const begin = performance.now();
const table = conditionTable({ runs: 5000, effort: 1000 });
const of = (gap: number, condition: string) =>
  table.find((cell) => cell.gap === gap && cell.condition === condition);

const heads = gaps.map((gap) => `${gap} m, ${of(gap, 'by day')?.bays} bays`);
console.log(
  `| condition | ${heads.map((head) => `${head}: planned | P50 | P80 | P50 over by day`).join(' | ')} |`,
);
console.log(`|---|${gaps.map(() => '---|---|---|---|').join('')}`);
for (const { name } of conditions) {
  const cells = gaps.map((gap) => {
    const [cell, day] = [of(gap, name), of(gap, 'by day')];
    if (!cell || !day) throw new Error(`no build of ${gap} m, ${name}`);
    const more = 100 * (cell.p50 / day.p50 - 1);
    return `${hours(cell.planned)} | ${hours(cell.p50)} | ${hours(cell.p80)} | ${more > 0 ? '+' : ''}${more.toFixed(0)} %`;
  });
  console.log(`| ${name} | ${cells.join(' | ')} |`);
}
console.log(`\n${((performance.now() - begin) / 1000).toFixed(1)} s`);

/** "5 h 07" */
function hours(minutes: number): string {
  const whole = Math.round(minutes);
  return `${Math.floor(whole / 60)} h ${String(whole % 60).padStart(2, '0')}`;
}
