import { designBridge } from '#domain/bridge/design.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import type { Kit } from '#domain/kit/kit.ts';
import heron from '#domain/kits/heron.json' with { type: 'json' };
import larchFord from '#domain/kits/larchFord.json' with { type: 'json' };
import { criticalPath } from '#domain/schedule/criticalPath.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import { orderOfWork } from '#domain/tasks/fromKit/orderOfWork.ts';
import type { Work } from '#domain/tasks/work.ts';
import { checkPlan } from '#tests/support/checkPlan.ts';
import { randomWork } from '#tests/support/randomWork.ts';

// Times plans of the demo build and of random orders of work of 100 to 5,000 tasks with crews, joint tasks, zones,
// keep-off, stores and waits: the first schedule, and the plan as it is made by default; each plan is checked by the
// independent checker. Run: node tests/run/script.mjs tests/bench/planDemo.ts

const kit = heron as unknown as Kit;
const bridge = designBridge(larchFord as Ground, kit, '');
if (!bridge.ok) throw new Error(bridge.reason.map(({ sentence }) => sentence).join(' '));
const demo = orderOfWork(bridge.value, kit);
if (!demo.ok) throw new Error(demo.reason.sentence);

console.log(
  'work              tasks  first ms  opens min  plan ms  opens min  bound  path  hand-overs',
);
row('demo build', demo.value);
row('demo, once more', demo.value);
for (const tasks of [100, 200, 500, 1000, 2000, 5000]) {
  const options = { crews: 7, zones: 6, joint: true, keepOff: true, loads: true, waits: true };
  row('random', randomWork(7, { tasks, ...options }));
}

function row(name: string, work: Work): void {
  const first = timed(work, 1);
  const whole = timed(work, undefined);
  const path = criticalPath(work, 'pert');
  const cells = [
    name.padEnd(16),
    String(work.tasks.length).padStart(6),
    first.milliseconds.toFixed(0).padStart(9),
    first.plan.minutesToOpen.toFixed(1).padStart(10),
    whole.milliseconds.toFixed(0).padStart(8),
    whole.plan.minutesToOpen.toFixed(1).padStart(10),
    whole.plan.lowerBound.toFixed(1).padStart(6),
    (path.ok ? path.value.minutes.toFixed(1) : '').padStart(6),
    String(whole.plan.handOvers.length).padStart(10),
  ];
  console.log(cells.join(' '));
}

function timed(work: Work, effort: number | undefined) {
  const begin = performance.now();
  const plan = makePlan(work, { shape: 'pert', crews: true, effort });
  const milliseconds = performance.now() - begin;
  if (!plan.ok) throw new Error(plan.reason.sentence);
  const wrong = work.tasks.length <= 1000 ? checkPlan(work, plan.value, { crews: true }) : [];
  if (wrong.length > 0) throw new Error(wrong.join('\n'));
  return { plan: plan.value, milliseconds };
}
