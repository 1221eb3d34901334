import { parseArgs } from 'node:util';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { usualDoubt } from '#domain/forecast/doubt/usualDoubt.ts';
import { DrawTables } from '#domain/forecast/drawTables.ts';
import { priorPace } from '#domain/forecast/learn/pace.ts';
import { darkSpells } from '#domain/forecast/light/darkSpells.ts';
import { simulate } from '#domain/forecast/simulate.ts';
import { crpsOf, distanceFromEven, jointChance, mean, type Score } from './calibration/score.ts';
import { snapshotAt } from './calibration/snapshot.ts';
import { playBuild, type World } from './calibration/truth.ts';
import { demoBuild, demoPlace } from './demoBuild.ts';

// Holds forecasts of the demo build against builds that are played, in a world as they believe and in three that they
// do not know: how often the truth comes by P10, P50, P80 and P90, at the start and at 25, 50 and 75 % of the work,
// with and without learning. Run: npm run bench:calibration [-- --builds N --runs N --json]
// Exits with 1 when the world as believed fails the joint test, or learning does not help in another.

const { values } = parseArgs({
  options: {
    builds: { type: 'string', default: '500' },
    runs: { type: 'string', default: '500' },
    json: { type: 'boolean', default: false },
  },
});
const builds = Number(values.builds);
const runs = Number(values.runs);
const worlds: World[] = ['as believed', 'independent tasks', 'heavier tail', 'one crew 1.4 slower'];
const points = [0, 0.25, 0.5, 0.75];
const promised = [0.1, 0.5, 0.8, 0.9];
/** A joint test this unlikely under calibration fails. */
const least = 0.001;

const start = '2026-12-01T12:30:00Z';
const { work, plan } = demoBuild();
const doubt = usualDoubt(work);
const dark = darkSpells(demoPlace, start, 5 * 24 * 60);
const tables = new DrawTables();

/** Scores by world, then by learning or not, then by point, then by build. */
type Scores = Map<World, { with: Score[][]; without: Score[][] }>;

function scoreAll(): Scores {
  const scores: Scores = new Map();
  worlds.forEach((world, number) => {
    const own = { with: points.map((): Score[] => []), without: points.map((): Score[] => []) };
    scores.set(world, own);
    // Neighbouring seeds begin alike: each build reads its own stretch of one generator.
    const stretches = xoroshiro128plus(1_000_003 * (number + 1));
    for (let build = 0; build < builds; build++) {
      const seed = 1 + build + number * 1_000_003;
      stretches.jump();
      const truth = playBuild(work, plan, doubt, dark, world, stretches.clone());
      points.forEach((share, point) => {
        const seen = snapshotAt(work, plan, truth, share);
        const score = (learns: boolean): Score => {
          const pace = learns ? {} : { pace: priorPace(work, doubt) };
          const { ticks, toldLoads } = seen;
          const forecast = simulate(seen.work, plan, {
            runs,
            seed,
            shape: 'pert',
            askedFor: truth.opening,
            past: seen.past,
            tables,
            doubts: { doubt, dark, ticks, toldLoads, ...pace },
          });
          const { p10, p50, p80, p90, percentiles, chanceBy } = forecast;
          const by = [p10, p50, p80, p90].map((value) => truth.opening <= value);
          const even = ((seed * 0.618033988749895) % 1) * (1 / (runs + 1));
          return {
            by: by as [boolean, boolean, boolean, boolean],
            pit: (chanceBy!.chance * runs) / (runs + 1) + even,
            miss: Math.abs(p50 - truth.opening),
            crps: crpsOf(percentiles, truth.opening),
            width: p90 - p10,
          };
        };
        const without = score(false);
        own.without[point]!.push(without);
        own.with[point]!.push(share === 0 ? without : score(true));
      });
    }
  });
  return scores;
}

const scores = scoreAll();
const rows = worlds.flatMap((world) =>
  points.flatMap((share, point) =>
    (['without', 'with'] as const)
      .filter((learning) => share > 0 || learning === 'without')
      .map((learning) => {
        const own = scores.get(world)![learning][point]!;
        return {
          world,
          done: share,
          learning,
          below: promised.map((_, k) => mean(own.map(({ by }) => (by[k] ? 1 : 0)))),
          distance: distanceFromEven(own.map(({ pit }) => pit)),
          miss: mean(own.map(({ miss }) => miss)),
          crps: mean(own.map(({ crps }) => crps)),
          width: mean(own.map(({ width }) => width)),
        };
      }),
  ),
);

const believed = scores.get('as believed')!.with;
const chance = jointChance(
  Array.from({ length: builds }, (_, build) =>
    points.flatMap((__, point) =>
      promised.map((p, k) => (believed[point]![build]!.by[k] ? 1 : 0) - p),
    ),
  ),
);
/** Mean CRPS over the three points under way. */
function error(world: World, learning: 'with' | 'without'): number {
  return mean(
    rows
      .filter((row) => row.world === world && row.learning === learning && row.done > 0)
      .map(({ crps }) => crps),
  );
}
const bars = [
  {
    name: 'joint test, as believed, with learning',
    value: chance,
    bar: least,
    passed: chance >= least,
  },
  ...worlds.slice(1).map((world) => {
    const value = error(world, 'with') / error(world, 'without');
    return { name: `error with over without learning, ${world}`, value, bar: 1, passed: value < 1 };
  }),
];

if (values.json) {
  console.log(JSON.stringify({ builds, runs, rows, bars }));
} else {
  console.log(`${builds} builds in each world, ${runs} runs a forecast`);
  console.log(
    'world                done  learning   P10   P50   P80   P90   PIT dist  miss  CRPS  width',
  );
  for (const { world, done, learning, below, distance, miss, crps, width } of rows) {
    const shares = below.map((share) => share.toFixed(3)).join(' ');
    const minutes = [miss, crps, width].map((each) => each.toFixed(1).padStart(5)).join(' ');
    const name = `${world.padEnd(20)} ${`${100 * done} %`.padStart(4)}  ${learning.padEnd(8)}`;
    console.log(`${name} ${shares}  ${distance.toFixed(3)}    ${minutes}`);
  }
  for (const { name, value, bar, passed } of bars) {
    console.log(`${name}: ${value.toFixed(3)} (bar ${bar}) ${passed ? 'held' : 'MISSED'}`);
  }
}
process.exitCode = bars.every(({ passed }) => passed) ? 0 : 1;
