import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { Link, Work } from '#domain/tasks/work.ts';
import { smallWork } from './smallWork.ts';

/** Six tasks, two crews, a zone, keep-off, choice of crew and waits, small enough to be solved to proof. */
export function tightWork(seed: number): Work {
  const random = xoroshiro128plus(seed);
  const draw = (least: number, most: number) => uniformInt(random, least, most);
  const links: Link[] = [];
  const rows = Array.from({ length: 6 }, (_, at) => {
    for (let from = 0; from < at; from += 1) {
      if (draw(0, 4) === 0) {
        const odd = draw(0, 3) === 0;
        const counts = odd && draw(0, 1) === 0 ? 'start' : 'finish';
        links.push({ from: `t${from}`, to: `t${at}`, counts, wait: odd ? draw(-2, 2) : 0 });
      }
    }
    return {
      id: `t${at}`,
      minutes: draw(1, 4),
      people: draw(1, 3),
      crews: [['a'], ['b'], []][draw(0, 2)]!,
      zones: draw(0, 1) === 0 ? ['z'] : [],
      keepOff: draw(0, 4) === 0,
    };
  });
  return smallWork(rows, {
    links,
    crews: [
      { id: 'a', people: 3 },
      { id: 'b', people: 4 },
    ],
    zones: [{ id: 'z', room: 5 }],
  });
}
