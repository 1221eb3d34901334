import type { Task } from '#domain/tasks/task.ts';
import type { Work } from '#domain/tasks/work.ts';

type Manned = {
  readonly task: Task;
  readonly people: readonly { readonly crew: string; readonly count: number }[];
  readonly all: number;
  readonly seconds: number;
};
type Placed = Manned & { readonly start: number; readonly finish: number };

/**
 * The earliest opening, in minutes, over all orders, crews and counts of people from the least to the most: every task
 * in turn as early as it can, in each order (some order gives the earliest opening: Sprecher, Kolisch, Drexl, European
 * Journal of Operational Research 80, 1995). For a few tasks of crews that stay as they are, zones, keep-off and links
 * without negative waits. Written apart from the planner.
 */
export function bruteForce(work: Work): number {
  const ways = work.tasks.map((task) => manned(work, task));
  let best = Number.POSITIVE_INFINITY;
  const placed: Placed[] = [];
  const place = (latest: number): void => {
    if (latest >= best) return;
    if (placed.length === work.tasks.length) {
      best = latest;
      return;
    }
    for (const [row, task] of work.tasks.entries()) {
      const came = (id: string) => placed.some((one) => one.task.id === id);
      if (came(task.id) || work.links.some(({ from, to }) => to === task.id && !came(from)))
        continue;
      for (const way of ways[row]!) {
        const start = earliest(work, placed, way);
        placed.push({ ...way, start, finish: start + way.seconds });
        place(Math.max(latest, start + way.seconds));
        placed.pop();
      }
    }
  };
  place(0);
  return best / 60;
}

function manned(work: Work, task: Task): Manned[] {
  let ways: { crew: string; count: number }[][] = [[]];
  for (const { anyOf, people } of task.needs) {
    const able = work.crews.filter(({ id }) => anyOf.length === 0 || anyOf.includes(id));
    ways = ways.flatMap((before) =>
      able
        .filter(({ id }) => before.every(({ crew }) => crew !== id))
        .flatMap((crew) => {
          const counts = [];
          for (let count = people.least; count <= Math.min(people.most, crew.people); count += 1)
            counts.push(count);
          return counts.map((count) => [...before, { crew: crew.id, count }]);
        }),
    );
  }
  const room = Math.min(
    ...work.zones
      .filter(({ id }) => task.zones.includes(id))
      .map((zone) => zone.room ?? Number.POSITIVE_INFINITY),
  );
  return ways
    .map((people) => {
      const slowest = Math.max(
        ...people.map(({ count }, at) => task.needs[at]!.people.usual / count),
      );
      const seconds = Math.max(1, Math.round(task.minutes.likely * 60 * slowest));
      const all = people.reduce((sum, { count }) => sum + count, 0);
      return { task, people, all, seconds };
    })
    .filter(({ all }) => all <= room);
}

function earliest(work: Work, placed: readonly Placed[], way: Manned): number {
  let ready = 0;
  for (const { from, to, counts, wait } of work.links) {
    const before = to === way.task.id && placed.find((one) => one.task.id === from);
    if (before)
      ready = Math.max(ready, (counts === 'start' ? before.start : before.finish) + wait * 60);
  }
  const moments = [ready, ...placed.map(({ finish }) => finish)]
    .filter((moment) => moment >= ready)
    .sort((one, other) => one - other);
  return moments.find((start) => fits(work, placed, way, start))!;
}

function fits(work: Work, placed: readonly Placed[], way: Manned, start: number): boolean {
  const together = placed.filter((one) => one.start < start + way.seconds && one.finish > start);
  const shared = (one: Manned) => one.task.zones.some((zone) => way.task.zones.includes(zone));
  if (together.some((one) => shared(one) && (one.task.keepOff || way.task.keepOff))) return false;
  return [start, ...together.map((one) => one.start).filter((moment) => moment > start)].every(
    (moment) => {
      const now = together.filter((one) => one.start <= moment && one.finish > moment);
      const enough = way.people.every(({ crew, count }) => {
        const at = now.flatMap(({ people }) => people).filter((one) => one.crew === crew);
        const held = at.reduce((sum, one) => sum + one.count, count);
        return held <= work.crews.find(({ id }) => id === crew)!.people;
      });
      return (
        enough &&
        work.zones.every(({ id, room = Number.POSITIVE_INFINITY }) => {
          const inside = [...now, way].filter(({ task }) => task.zones.includes(id));
          return (
            !way.task.zones.includes(id) || inside.reduce((sum, { all }) => sum + all, 0) <= room
          );
        })
      );
    },
  );
}
