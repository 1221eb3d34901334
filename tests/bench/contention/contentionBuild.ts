import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { Need, Task } from '#domain/tasks/task.ts';
import type { Crew, Link, Load, Work, Zone } from '#domain/tasks/work.ts';

type Draw = (least: number, most: number) => number;

/**
 * A build in which crews and zones, not links, set the opening: the same seed gives the same build. Sixty to two hundred
 * tasks in stages; each stage ends with moves that keep everybody else off, some tasks are joint, some may be done by
 * any of several crews or with fewer people, some stores come late. Invented, of no real site.
 */
export function contentionBuild(seed: number): Work {
  const random = xoroshiro128plus(seed);
  // The first draws of neighbouring seeds are alike.
  for (let drawn = 0; drawn < 20; drawn += 1) random.next();
  const draw: Draw = (least, most) => uniformInt(random, least, most);
  const count = draw(60, 200);
  const crews = Array.from({ length: draw(2, 5) }, (_, at): Crew => {
    const id = `crew${at + 1}`;
    return { id, name: `Crew ${at + 1}`, people: draw(4, 9), skills: [], attached: false };
  });
  const zones = Array.from({ length: draw(2, 4) }, (_, at): Zone => {
    const room = draw(0, 1) === 0 ? {} : { room: draw(8, 14) };
    return { id: `zone${at + 1}`, name: `Zone ${at + 1}`, bank: 'near', ...room };
  });
  const loads = [0, 1, 2].map((at): Load => {
    return { id: `load${at + 1}`, name: `Load ${at + 1}`, arrives: at * draw(0, 30) };
  });
  const stage = draw(10, 25);
  const tasks: Task[] = [];
  const links: Link[] = [];
  for (let at = 0; at < count; at += 1) {
    const move = at % stage === stage - 1;
    const likely = draw(3, 20);
    tasks.push({
      id: `t${at}`,
      number: at + 1,
      name: `Task ${at + 1}`,
      phase: `Stage ${Math.floor(at / stage) + 1}`,
      needs: needsOf(draw, crews, zones),
      minutes: { quick: likely - draw(0, 2), likely, slow: likely + draw(0, 6) },
      zones: [zones[draw(0, zones.length - 1)]!.id],
      keepOff: move,
      opens: false,
      cautions: [],
      tools: [],
      loads: draw(0, 9) === 0 ? [loads[draw(0, loads.length - 1)]!.id] : [],
    });
    links.push(...linksInto(draw, at, stage));
  }
  return { tasks, links, crews, zones, loads };
}

/** People of one crew, or of two at once; never more than the smallest crew or zone leaves room for. */
function needsOf(draw: Draw, crews: readonly Crew[], zones: readonly Zone[]): Need[] {
  const smallest = Math.min(...crews.map(({ people }) => people));
  const room = Math.min(...zones.map((zone) => zone.room ?? 20));
  const people = (most: number) => {
    const usual = draw(1, most);
    return { least: draw(0, 2) === 0 ? Math.ceil(usual / 2) : usual, usual, most: usual };
  };
  if (draw(0, 5) === 0) {
    const first = draw(0, crews.length - 2);
    const second = draw(first + 1, crews.length - 1);
    return [crews[first]!, crews[second]!].map(({ id }) => {
      return { anyOf: [id], people: people(Math.min(smallest, Math.floor(room / 2))) };
    });
  }
  const able = crews.filter(() => draw(0, 2) === 0).map(({ id }) => id);
  const one = crews[draw(0, crews.length - 1)]!.id;
  return [{ anyOf: able.length > 0 ? able : [one], people: people(smallest) }];
}

/** One to three tasks shortly before; the first of a stage comes after the move of the stage before. */
function linksInto(draw: Draw, to: number, stage: number): Link[] {
  const before = new Set<number>();
  for (let turn = draw(0, 2); turn > 0 && to > 0; turn -= 1) {
    before.add(draw(Math.max(0, to - stage), to - 1));
  }
  if (to >= stage && draw(0, 2) === 0) before.add(to - (to % stage) - 1);
  return [...before].map((from) => {
    const wait = draw(0, 9) === 0 ? draw(1, 10) : 0;
    return { from: `t${from}`, to: `t${to}`, counts: 'finish', wait };
  });
}
