import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { listInstances } from './instances.ts';
import { type Row, type RowOptions, scheduleRow } from './scheduleRow.ts';

// Every `.sm` instance of a folder, scheduled and checked: `bench:schedule -- DIR [--schedules N | --seconds S]
// [--workers W] [--seed K] [--every N] [--json]`. Averages last. With workers, W instances are at work at once, each
// on one core; by schedules the results are the same as with one.

type Share = { readonly folder: string; readonly every: number; readonly options: RowOptions };

const usage =
  'bench:schedule -- DIR [--schedules N | --seconds S] [--workers W] [--seed K] [--json]\n';

if (isMainThread) await main();
else workOff();

async function main(): Promise<void> {
  const { values, positionals } = parseArgs({
    args: process.argv.slice(2),
    allowPositionals: true,
    options: {
      schedules: { type: 'string' },
      seconds: { type: 'string' },
      workers: { type: 'string', default: '1' },
      seed: { type: 'string', default: '1' },
      every: { type: 'string', default: '1' },
      json: { type: 'boolean', default: false },
    },
  });
  const [folder] = positionals;
  if (!folder) {
    process.stderr.write(usage);
    process.exit(2);
  }
  const seconds = values.seconds === undefined ? null : Number(values.seconds);
  const schedules = values.schedules === undefined ? null : Number(values.schedules);
  const share: Share = {
    folder,
    every: Number(values.every),
    options: {
      seed: Number(values.seed),
      seconds,
      schedules: schedules ?? (seconds === null ? 5000 : null),
    },
  };
  const rows: Row[] = [];
  const take = (row: Row) => {
    rows.push(row);
    if (!values.json) process.stdout.write(line(row));
  };
  const began = performance.now();
  const workers = Number(values.workers);
  if (workers > 1) await workTogether(share, workers, take);
  else for (const listed of instancesOf(share)) take(scheduleRow(listed, share.options));
  rows.sort((one, other) => (one.instance < other.instance ? -1 : 1));
  const averages = averagesOf(rows, (performance.now() - began) / 1000);
  process.stdout.write(`${JSON.stringify(values.json ? { rows, averages } : averages)}\n`);
}

function instancesOf({ folder, every }: Share) {
  return listInstances(folder).filter((_, at) => at % every === 0);
}

/** Hands instances out one by one, so that a long one keeps nobody waiting. */
async function workTogether(share: Share, workers: number, take: (row: Row) => void) {
  const count = instancesOf(share).length;
  let next = 0;
  const one = async () => {
    const worker = new Worker(fileURLToPath(import.meta.url), { workerData: share });
    while (next < count) {
      worker.postMessage(next++);
      const [row] = (await once(worker, 'message')) as [Row];
      take(row);
    }
    await worker.terminate();
  };
  await Promise.all(Array.from({ length: workers }, one));
}

function workOff(): void {
  const share = workerData as Share;
  const instances = instancesOf(share);
  parentPort?.on('message', (at: number) => {
    parentPort?.postMessage(scheduleRow(instances[at]!, share.options));
  });
}

function line({ instance, makespan, lowerBound, proven, schedules, seconds }: Row): string {
  const bound = `bound ${lowerBound}${proven ? ' proven' : ''}`;
  return `${instance.padEnd(12)} ${makespan} ${bound} ${schedules} schedules ${seconds.toFixed(2)} s\n`;
}

function averagesOf(rows: readonly Row[], elapsed: number) {
  const spent = rows.reduce((sum, row) => sum + row.seconds, 0);
  return {
    instances: rows.length,
    percentOverCriticalPath: mean(rows.map((row) => row.overCriticalPath)),
    percentOverBest: mean(rows.map((row) => row.overBest)),
    pointsOverBest: mean(rows.map((row) => row.pointsOverBest)),
    reached: rows.filter((row) => row.reached).length,
    proven: rows.filter((row) => row.proven).length,
    schedulesPerSecond: Math.round(rows.reduce((sum, row) => sum + row.schedules, 0) / spent),
    seconds: elapsed,
    peakMegabytes: Math.round(process.resourceUsage().maxRSS / 1024),
  };
}

function mean(numbers: readonly (number | null)[]): number | null {
  const known = numbers.filter((each) => each !== null);
  return known.length === 0 ? null : known.reduce((sum, each) => sum + each, 0) / known.length;
}
