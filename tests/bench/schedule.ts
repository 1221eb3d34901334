import { parseArgs } from 'node:util';
import { search } from '#domain/schedule/search/search.ts';
import { checkSm } from '#tests/support/checkSm.ts';
import { smProblem, smStarts } from '#tests/support/smProblem.ts';
import { listInstances } from './instances.ts';

// Every `.sm` instance of a folder, scheduled and checked: `bench:schedule -- DIR [--schedules N | --seconds S]
// [--seed K] [--every N] [--json]`. Averages last.

const { values, positionals } = parseArgs({
  args: process.argv.slice(2),
  allowPositionals: true,
  options: {
    schedules: { type: 'string' },
    seconds: { type: 'string' },
    seed: { type: 'string', default: '1' },
    every: { type: 'string', default: '1' },
    json: { type: 'boolean', default: false },
  },
});
const [folder] = positionals;
if (!folder) {
  process.stderr.write('bench:schedule -- DIR [--schedules N | --seconds S] [--seed K] [--json]\n');
  process.exit(2);
}
const seconds = values.seconds === undefined ? null : Number(values.seconds);
const budget =
  values.schedules === undefined && seconds !== null ? null : Number(values.schedules ?? 5000);

const rows = listInstances(folder)
  .filter((_, at) => at % Number(values.every) === 0)
  .map(({ name, instance, criticalPath, bestKnown }) => {
    const began = performance.now();
    const found = search(smProblem(instance), {
      seed: Number(values.seed),
      ...(budget !== null && { schedules: budget }),
      shouldStop: () => seconds !== null && performance.now() - began > seconds * 1000,
    });
    const took = (performance.now() - began) / 1000;
    const { faults, makespan } = checkSm(instance, smStarts(found.starts, found.length));
    if (faults.length > 0) throw new Error(`${name}: ${faults.join('; ')}`);
    return {
      instance: name,
      makespan,
      lowerBound: found.lower,
      proven: makespan === found.lower,
      schedules: Math.round(found.schedules),
      seconds: took,
      overCriticalPath: 100 * (makespan / (criticalPath ?? found.lower) - 1),
      overBest: bestKnown === undefined ? null : 100 * (makespan / bestKnown - 1),
      pointsOverBest:
        bestKnown === undefined
          ? null
          : (100 * (makespan - bestKnown)) / (criticalPath ?? found.lower),
      reached: bestKnown === undefined ? null : makespan <= bestKnown,
    };
  });

const mean = (numbers: readonly (number | null)[]): number | null => {
  const known = numbers.filter((each) => each !== null);
  return known.length === 0 ? null : known.reduce((sum, each) => sum + each, 0) / known.length;
};
const spent = rows.reduce((sum, row) => sum + row.seconds, 0);
const averages = {
  instances: rows.length,
  percentOverCriticalPath: mean(rows.map((row) => row.overCriticalPath)),
  percentOverBest: mean(rows.map((row) => row.overBest)),
  pointsOverBest: mean(rows.map((row) => row.pointsOverBest)),
  reached: rows.filter((row) => row.reached).length,
  proven: rows.filter((row) => row.proven).length,
  schedulesPerSecond: Math.round(rows.reduce((sum, row) => sum + row.schedules, 0) / spent),
};

if (values.json) {
  process.stdout.write(`${JSON.stringify({ rows, averages })}\n`);
} else {
  for (const { instance, makespan, lowerBound, proven, schedules, seconds: took } of rows)
    process.stdout.write(
      `${instance.padEnd(12)} ${makespan} bound ${lowerBound}${proven ? ' proven' : ''} ${schedules} schedules ${took.toFixed(2)} s\n`,
    );
  process.stdout.write(`${JSON.stringify(averages)}\n`);
}
