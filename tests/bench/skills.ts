import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { makePlan } from '#domain/schedule/makePlan.ts';
import { checkPlan } from '#tests/support/checkPlan.ts';
import { mspspWork } from '#tests/support/mspspWork.ts';

// Every multi-skill instance (`.dzn`) of a folder, planned as a build by the real model and checked:
// `bench:skills -- DIR [--seconds S] [--every N]`. DIR.csv beside it: `instance,root_lb,best_lb,best_ub`.

const { values, positionals } = parseArgs({
  args: process.argv.slice(2),
  allowPositionals: true,
  options: {
    seconds: { type: 'string', default: '2' },
    every: { type: 'string', default: '1' },
  },
});
const [folder] = positionals;
if (!folder) {
  process.stderr.write('bench:skills -- DIR [--seconds S] [--every N]\n');
  process.exit(2);
}
const best = new Map(
  readFileSync(`${folder.replace(/\/+$/, '')}.csv`, 'utf8')
    .split('\n')
    .slice(1)
    .map((line): [string, number] => [line.split(',')[0]!, Number(line.split(',')[3])]),
);
const gaps: number[] = [];
const files = readdirSync(folder).filter((file) => file.endsWith('.dzn'));
for (const file of files.sort().filter((_, at) => at % Number(values.every) === 0)) {
  const work = mspspWork(readFileSync(join(folder, file), 'utf8'));
  const began = performance.now();
  const shouldStop = () => performance.now() - began > Number(values.seconds) * 1000;
  const effort = Number.MAX_SAFE_INTEGER;
  const plan = makePlan(work, { shape: 'pert', crews: true, effort, shouldStop });
  if (!plan.ok) throw new Error(`${file}: ${plan.reason.sentence}`);
  const faults = checkPlan(work, plan.value, { crews: true });
  if (faults.length > 0) throw new Error(`${file}: ${faults.join('; ')}`);
  const name = file.replace(/\.dzn$/, '');
  const { minutesToOpen, lowerBound } = plan.value;
  const known = best.get(name);
  if (known) gaps.push((100 * (minutesToOpen - known)) / known);
  process.stdout.write(`${name} ${minutesToOpen} bound ${lowerBound} best ${known ?? 'unknown'}\n`);
}
const sum = gaps.reduce((total, gap) => total + gap, 0);
process.stdout.write(
  `${JSON.stringify({ instances: gaps.length, percentOverBest: sum / gaps.length, reached: gaps.filter((gap) => gap <= 0).length })}\n`,
);
