import type { Work } from '../../tasks/work.ts';
import type { DrawTables } from '../drawTables.ts';
import type { Shape } from '../forecast.ts';
import type { Outlook } from '../outlook.ts';
import type { DoubtEvent } from './events.ts';

/** A delay that comes with a chance. `below` is the chance in random numbers of 32 bits. */
type Delay = {
  readonly below: number;
  readonly quick: number;
  readonly range: number;
  readonly tableAt: number;
};

/** A truck that may be late, and the positions of the tasks that wait for it. */
export type LateTruck = Delay & { readonly arrives: number; readonly tasks: Int32Array };

/** A task that something may hold up. */
export type Jammed = Delay & { readonly task: number };

/** One task that comes back when a hold fails: whole minutes, and which earlier ones of the list it comes after. */
type Redone = {
  readonly task: number;
  readonly quick: number;
  readonly range: number;
  readonly tableAt: number;
  readonly after: Int32Array;
};

/** A hold that may fail. `below` and `belowTwice` are the chances of failing once and twice. */
export type Failing = {
  readonly task: number;
  readonly below: number;
  readonly belowTwice: number;
  readonly redo: readonly Redone[];
};

export type Events = {
  readonly trucks: readonly LateTruck[];
  readonly jams: readonly Jammed[];
  readonly holds: readonly Failing[];
};

export type EventWorld = {
  readonly work: Work;
  readonly outlooks: readonly Outlook[];
  readonly shape: Shape;
  readonly tables: DrawTables;
  /** Minutes of the work's estimate are multiplied by this, by position: people, conditions, practice. */
  readonly factors: Float64Array;
  /** Loads whose time is known: they have come, or somebody told when they will. */
  readonly told: ReadonlySet<string>;
  readonly now: number;
};

const share = 2 ** 32;

/**
 * Lays out what may happen. Every task and load that an event names keeps its place and its random numbers, also when
 * the event is off or its task done, so that forecasts with and without it pair up.
 */
export function compileEvents(events: readonly DoubtEvent[], world: EventWorld): Events {
  const { work, outlooks } = world;
  const rows = new Map(work.tasks.map(({ id }, row) => [id, row]));
  const trucks: LateTruck[] = [];
  const jams: Jammed[] = [];
  const holds: Failing[] = [];
  for (const event of events) {
    const chance = event.on ? event.chance : 0;
    if (event.kind === 'late-load') {
      for (const load of work.loads.filter(({ id }) => event.loads.includes(id))) {
        const known = world.told.has(load.id) || load.arrives < world.now;
        const tasks = work.tasks.flatMap(({ loads }, row) =>
          loads.includes(load.id) ? [row] : [],
        );
        trucks.push({
          ...delayOf(event.delay, known ? 0 : chance, world),
          arrives: load.arrives,
          tasks: Int32Array.from(tasks.filter((row) => outlooks[row]!.startedAt === null)),
        });
      }
      continue;
    }
    for (const id of event.tasks) {
      const task = rows.get(id);
      // Tasks that a change took out of the order of work cannot be held up.
      if (task === undefined) continue;
      const own = isDone(outlooks[task]!) ? 0 : chance;
      if (event.kind === 'jam') {
        jams.push({ ...delayOf(event.delay, own, world), task });
      } else {
        const redo = redoneAt(task, rows, world);
        holds.push({ task, below: own * share, belowTwice: own * own * share, redo });
      }
    }
  }
  return { trucks, jams, holds };
}

function isDone({ waits, slow, leastFinish, from }: Outlook): boolean {
  return !waits && slow === 0 && leastFinish === from;
}

function delayOf(
  delay: { readonly quick: number; readonly likely: number; readonly slow: number },
  chance: number,
  { shape, tables }: EventWorld,
): Delay {
  const { quick, slow } = delay;
  return { below: chance * share, quick, range: slow - quick, tableAt: tables.at(shape, delay) };
}

/** The redo list of a hold in the order of its links, which stand among themselves as in the whole work. */
function redoneAt(
  hold: number,
  rows: ReadonlyMap<string, number>,
  { work, shape, tables, factors }: EventWorld,
): Redone[] {
  const ids = work.tasks[hold]!.hold?.redo.filter((id) => rows.has(id)) ?? [];
  const before = new Map(
    ids.map((id) => [
      id,
      work.links.filter(({ from, to }) => to === id && ids.includes(from)).map(({ from }) => from),
    ]),
  );
  const sorted: string[] = [];
  while (sorted.length < ids.length) {
    const next = ids.find(
      (id) => !sorted.includes(id) && before.get(id)!.every((from) => sorted.includes(from)),
    );
    if (next === undefined) throw new Error('The redo list of a hold makes a loop.');
    sorted.push(next);
  }
  return sorted.map((id) => {
    const task = rows.get(id)!;
    const { minutes } = work.tasks[task]!;
    const factor = factors[task]!;
    return {
      task,
      quick: minutes.quick * factor,
      range: (minutes.slow - minutes.quick) * factor,
      tableAt: tables.at(shape, minutes),
      after: Int32Array.from(before.get(id)!, (from) => sorted.indexOf(from)),
    };
  });
}
