import { designBridge } from '#domain/bridge/design.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import { stageStatics } from '#domain/bridge/statics/stageStatics.ts';
import { simulate } from '#domain/forecast/simulate.ts';
import type { Kit } from '#domain/kit/kit.ts';
import { readKit } from '#domain/kit/readKit.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import { orderOfWork } from '#domain/tasks/fromKit/orderOfWork.ts';
import double from '#tests/corpus/kits/panelDouble.json' with { type: 'json' };
import single from '#tests/corpus/kits/panelSingle.json' with { type: 'json' };

// Plans the panel bridge of FM 5-277 for bridges of 40, 60, 80 and 100 ft and prints nose, stages and time to open
// beside what could be read of it. Run: node tests/run/script.mjs tests/bench/panelBridge.ts

const foot = 0.3048;

function kitOf(json: unknown): Kit {
  const read = readKit(json);
  if (!read.ok) throw new Error(JSON.stringify(read.reason));
  return read.value;
}

function groundFor(length: number, room: number | null): Ground {
  const bank = { kind: 'made', height: null, setback: 0 } as const;
  return {
    format: 'spanwright-ground',
    version: 1,
    name: `${length} ft`,
    zone: 'UTC',
    place: null,
    gap: (length - 5) * foot,
    near: bank,
    far: bank,
    roomBehind: room,
    water: { depth: null, rise: null },
    loadClass: 1,
  };
}

console.log(
  'length  truss   nose  decked  margin ft  moves  in 25 m  room ft  pushed by  50 %   90 %  (minutes)',
);
for (const length of [40, 60, 80, 100]) {
  const kit = kitOf(length > 80 ? double : single);
  const designed = designBridge(groundFor(length, null), kit, '');
  if (!designed.ok) throw new Error(designed.reason[0]?.sentence);
  const bridge = designed.value;
  const tight = designBridge(groundFor(length, 25), kit, '');
  const landing = stageStatics(bridge, kit, 0).find(({ lands }) => lands);
  const work = orderOfWork(bridge, kit);
  if (!work.ok) throw new Error(work.reason.sentence);
  const plan = makePlan(work.value, { shape: 'pert', crews: true, effort: 1 });
  if (!plan.ok) throw new Error(plan.reason.sentence);
  const forecast = simulate(work.value, plan.value, {
    runs: 5000,
    seed: 1,
    shape: 'pert',
    askedFor: null,
  });
  console.log(
    [
      `${length} ft`.padEnd(7),
      (length > 80 ? 'double' : 'single').padEnd(7),
      String(bridge.nose).padStart(4),
      String(landing?.decked.length).padStart(7),
      ((landing?.margin ?? 0) / foot).toFixed(2).padStart(10),
      String(bridge.stages.length).padStart(6),
      (tight.ok ? String(tight.value.stages.length) : 'none').padStart(8),
      (bridge.roomNeeded / foot).toFixed(0).padStart(8),
      `${Math.ceil((0.03 * (landing?.kilograms ?? 0) * 9.80665) / 200)} people`.padStart(10),
      forecast.p50.toFixed(0).padStart(6),
      forecast.p90.toFixed(0).padStart(6),
    ].join(' '),
  );
}
console.log(`
What could be read of published figures, and why these differ:
- 80 ft: with 6 nose sections and all bays alike the centre of gravity is 5.04 ft behind the rollers, with 5 it is 2.00 ft
  ahead, and with the front three bays bare 0.21 ft behind (worked from FM 5-277's rule). Here it takes 6 as well, and
  with most bays bare two rear decks hold it by 2.4 ft: the parts that could be read weigh 4 % less than that bay, so
  that five tip however many rear bays are decked.
- The manual's own table of noses could not be read. It was written for one way of decking and with a margin to spare;
  the kit asks for none, because no figure for it was to hand.
- An 80 ft section was pushed over by 35 people and more (semissourian.com, story 2765008); the people above are for a
  rolling resistance of 0.03 and 200 N each, which are assumptions.
- Two hours were claimed for it in wartime and six taken at a fair (same story). From memory and so only to look at:
  one and a half to two and a quarter hours for single truss of 40 to 100 ft. The times above rest on assumed minutes,
  leave approaches out, and take one party of 34.`);
