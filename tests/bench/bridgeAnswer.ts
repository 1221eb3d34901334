import type { Ground } from '#domain/bridge/ground.ts';
import type { Kit } from '#domain/kit/kit.ts';
import heron from '#domain/kits/heron.json' with { type: 'json' };
import larchFord from '#domain/kits/larchFord.json' with { type: 'json' };
import { bridgeAnswer } from '#server/commands/bridgeAnswer.ts';

// Times all that `spanwright bridge --json` works out: design, statics, choice, stores, what the answer hangs on. The
// demo kit stops at 45 m, so that for 50 m it is given more bays and a longer nose. Rounds one after the other, the
// first of which pays for compiling the code. Run: node tests/run/script.mjs tests/bench/bridgeAnswer.ts

const kit = heron as unknown as Kit;
const { launch } = kit;
if (!launch || !kit.nose) throw new Error('The demo kit is launched with a nose.');
const long: Kit = {
  ...kit,
  bay: { ...kit.bay, most: 20 },
  nose: { ...kit.nose, most: 12 },
  launch: { ...launch, heaviestPush: 60_000 },
  loadClasses: [{ upTo: 90, loadClass: 12 }],
};
const ground = larchFord as Ground;

console.log('gap     bays  nose  moves  choices  first ms  median ms  slowest ms');
for (const [gap, of] of [
  [31, kit],
  [50, long],
] as const) {
  const asked: Ground = { ...ground, gap, loadClass: 12, roomBehind: 60 };
  const times: number[] = [];
  for (let round = 0; round < 15; round += 1) {
    const begin = performance.now();
    const answer = bridgeAnswer(asked, of, '');
    times.push(performance.now() - begin);
    if (!answer.ok) throw new Error(answer.reason[0]?.sentence);
    if (round === 14) {
      const { bays, nose, stages, choice } = answer.value;
      const sorted = times.toSorted((a, b) => a - b);
      console.log(
        [
          `${gap} m`.padEnd(6),
          String(bays).padStart(5),
          String(nose).padStart(5),
          String(stages.length).padStart(6),
          String(choice.fitting.length).padStart(8),
          (times[0] ?? 0).toFixed(0).padStart(9),
          (sorted[7] ?? 0).toFixed(0).padStart(10),
          (sorted.at(-1) ?? 0).toFixed(0).padStart(11),
        ].join(' '),
      );
    }
  }
}
