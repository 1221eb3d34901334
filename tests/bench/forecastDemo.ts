import { designBridge } from '#domain/bridge/design.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import { simulate } from '#domain/forecast/simulate.ts';
import type { Kit } from '#domain/kit/kit.ts';
import heron from '#domain/kits/heron.json' with { type: 'json' };
import larchFord from '#domain/kits/larchFord.json' with { type: 'json' };
import { makePlan } from '#domain/schedule/makePlan.ts';
import { orderOfWork } from '#domain/tasks/fromKit/orderOfWork.ts';

// Times the forecast of the demo build: 10,000 runs on one core, several rounds, because the first one
// also pays for compiling the code. Run: node tests/run/script.mjs tests/bench/forecastDemo.ts

const runs = 10_000;
const rounds = 7;
const kit = heron as unknown as Kit;

const bridge = designBridge(larchFord as Ground, kit, '');
if (!bridge.ok) throw new Error(bridge.reason.map(({ sentence }) => sentence).join(' '));
const order = orderOfWork(bridge.value, kit);
if (!order.ok) throw new Error(order.reason.sentence);
const work = order.value;
const planned = makePlan(work, { shape: 'pert', crews: true });
if (!planned.ok) throw new Error(planned.reason.sentence);
const plan = planned.value;

console.log(
  `${work.tasks.length} tasks, ${work.links.length} links, ${plan.handOvers.length} hand-overs; ` +
    `planned opening after ${plan.minutesToOpen.toFixed(1)} min`,
);
const times: number[] = [];
for (let round = 0; round < rounds; round++) {
  const begin = performance.now();
  const forecast = simulate(work, plan, { runs, seed: 1, shape: 'pert', askedFor: 330 });
  times.push(performance.now() - begin);
  if (round === 0) {
    const { mean, p50, p90, chanceBy } = forecast;
    console.log(
      `mean ${mean.toFixed(1)}, even chance ${p50.toFixed(1)}, nine in ten ${p90.toFixed(1)} min; ` +
        `by ${chanceBy?.minutes} min: ${chanceBy?.chance.toFixed(3)}`,
    );
  }
}
const sorted = times.toSorted((a, b) => a - b);
console.log(
  `${runs} runs: first ${times[0]!.toFixed(0)} ms, median of ${rounds} ${sorted[rounds >> 1]!.toFixed(0)} ms, ` +
    `slowest ${sorted.at(-1)!.toFixed(0)} ms`,
);
