import { parseArgs } from 'node:util';
import { compile } from '#domain/schedule/compile.ts';
import { Placer } from '#domain/schedule/improve/placer.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import { manningOf } from '#domain/schedule/manning.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import { priorityKeys } from '#domain/schedule/priorities.ts';
import { settlePast } from '#domain/schedule/settled.ts';
import type { Work } from '#domain/tasks/work.ts';
import { checkPlan } from '#tests/support/checkPlan.ts';
import { contentionBuild } from './contention/contentionBuild.ts';
import { demoBuild } from './demoBuild.ts';

// Builds in which crews and zones set the opening, planned for some seconds of processor time each and checked: how far the plan is from
// what no plan can beat. `bench:contention -- [--seed K] [--count N] [--seconds S] [--json]`. Averages last, with the
// schedules a second that the demo build allows.

const { values } = parseArgs({
  options: {
    seed: { type: 'string', default: '1' },
    count: { type: 'string', default: '12' },
    seconds: { type: 'string', default: '5' },
    json: { type: 'boolean', default: false },
  },
});
const first = Number(values.seed);
const seconds = Number(values.seconds);

/** Seconds of processor time spent so far: other work on the machine does not count. */
function processorSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

function planned(work: Work): Plan {
  const began = processorSeconds();
  const shouldStop = () => processorSeconds() - began > seconds;
  const plan = makePlan(work, {
    shape: 'pert',
    crews: true,
    effort: Number.MAX_SAFE_INTEGER,
    shouldStop,
  });
  if (!plan.ok) throw new Error(plan.reason.sentence);
  const wrong = checkPlan(work, plan.value, { crews: true });
  if (wrong.length > 0) throw new Error(wrong.join('; '));
  return plan.value;
}

/** Schedules that can be made in a second: forward and pushed to the end in turn. */
function schedulesPerSecond(work: Work): number {
  const manning = manningOf(work, 'pert', true);
  const past = settlePast(manning, undefined);
  if (!past.ok) throw new Error(past.reason.sentence);
  const compilation = compile(manning, past.value);
  if (!compilation.ok) throw new Error(compilation.reason.sentence);
  const { compiled } = compilation.value;
  const placer = new Placer(compiled, compiled.toOpen);
  const rule = priorityKeys(compiled)[0]!;
  const began = processorSeconds();
  let made = 0;
  for (; processorSeconds() - began < 1; made += 2) {
    placer.pushToEnd(placer.forward(made === 0 ? rule : placer.now.start));
  }
  return made;
}

const rows = Array.from({ length: Number(values.count) }, (_, at) => {
  const work = contentionBuild(first + at);
  const began = processorSeconds();
  const plan = planned(work);
  const took = processorSeconds() - began;
  const { minutesToOpen, lowerBound } = plan;
  const gap = 100 * (minutesToOpen / lowerBound - 1);
  return { seed: first + at, tasks: work.tasks.length, minutesToOpen, lowerBound, gap, took };
});
const averageGap = rows.reduce((sum, { gap }) => sum + gap, 0) / rows.length;

const demoSchedulesPerSecond = Math.round(schedulesPerSecond(demoBuild(1).work));

if (values.json) {
  process.stdout.write(`${JSON.stringify({ rows, averageGap, demoSchedulesPerSecond })}\n`);
} else {
  for (const { seed, tasks, minutesToOpen, lowerBound, gap, took } of rows)
    process.stdout.write(
      `seed ${seed}: ${tasks} tasks, opens ${minutesToOpen.toFixed(1)}, bound ${lowerBound.toFixed(1)}, gap ${gap.toFixed(2)} %, ${took.toFixed(1)} s\n`,
    );
  process.stdout.write(
    `${JSON.stringify({ builds: rows.length, averageGap, demoSchedulesPerSecond })}\n`,
  );
}
