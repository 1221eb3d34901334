import type { Skilled, Task } from '../tasks/task.ts';
import { bankOf } from './crossing.ts';
import type { Manning } from './manning.ts';
import type { HandOver } from './plan.ts';
import type { Busy } from './profile.ts';
import type { Settled, SettledPast } from './settled.ts';
import type { StrengthStep } from './strength.ts';
import type { Way } from './ways.ts';
import { skilledOf } from './whoCan.ts';

/** A crew, a zone or a kind of equipment by its row in the work; with a skill, the people of the crew who have it. */
type ResourceOf = {
  readonly kind: HandOver['kind'];
  readonly row: number;
  readonly skill?: string;
};

/** What tasks hold while they run: people of crews, equipment, and room in zones where that can make anybody wait. */
export type Resources = {
  readonly of: readonly ResourceOf[];
  /** True for a zone without a limit of room, where only keep-off tasks make others wait. */
  readonly unlimited: readonly boolean[];
  readonly uses: {
    readonly capacity: Int32Array;
    readonly crewCount: number;
    readonly across: Int32Array;
    readonly users: Int32Array;
    readonly busy: Busy;
    readonly useHead: Int32Array;
    readonly useOf: Int32Array;
    readonly useAmount: Int32Array;
  };
  /** What a task at work holds. */
  readonly held: (task: Task, settled: Settled) => { of: number; amount: number }[];
};

/** Numbers the resources and says what every way holds. `wayHead` and `ways` follow `tasks`. */
export function resourcesOf(
  manning: Manning,
  past: SettledPast,
  tasks: readonly Task[],
  wayHead: readonly number[],
  ways: readonly Way[],
): Resources {
  const { work } = manning;
  const of: ResourceOf[] = [];
  const unlimited: boolean[] = [];
  const capacity: number[] = [];
  const crewNumber = new Map<string, number>();
  if (manning.crews) {
    for (const [row, crew] of work.crews.entries()) {
      crewNumber.set(crew.id, of.length);
      of.push({ kind: 'crew', row });
      unlimited.push(false);
      capacity.push(Math.max(...manning.strengths[row]!.map(({ people }) => people)));
    }
  }
  const zoneNumber = new Map<string, number>();
  const crowds = crowdsOf(manning, past, tasks, wayHead, ways);
  for (const [row, zone] of work.zones.entries()) {
    const crowd = crowds.get(zone.id);
    if (crowd && (crowd.keptOff || (zone.room ?? Number.POSITIVE_INFINITY) < crowd.people)) {
      zoneNumber.set(zone.id, of.length);
      of.push({ kind: 'zone', row });
      unlimited.push((zone.room ?? Number.POSITIVE_INFINITY) >= crowd.people);
      // At least one, so that two keep-off tasks shut each other out even where nobody else ever is.
      capacity.push(Math.max(1, Math.min(crowd.people, zone.room ?? crowd.people)));
    }
  }
  const equipmentNumber = new Map<string, number>();
  for (const [row, { id, count }] of (work.equipment ?? []).entries()) {
    equipmentNumber.set(id, of.length);
    of.push({ kind: 'equipment', row });
    unlimited.push(false);
    capacity.push(count);
  }
  const skillNumber = new Map<string, number>();
  for (const [row, crew] of manning.crews ? work.crews.entries() : []) {
    for (const { skill, people } of crew.skilled ?? []) {
      skillNumber.set(`${row} ${skill}`, of.length);
      of.push({ kind: 'crew', row, skill });
      unlimited.push(false);
      capacity.push(people);
    }
  }
  const across = new Array<number>(of.length).fill(-1);
  const bankNumber = new Map<string, number>();
  const banks = manning.crossing > 0 ? (['near', 'far'] as const) : [];
  for (const row of banks.length > 0 ? work.crews.keys() : []) {
    for (const [side, bank] of banks.entries()) {
      bankNumber.set(`${row} ${bank}`, of.length);
      across.push(side === 0 ? of.length + 1 : of.length - 1);
      of.push({ kind: 'crew', row });
      unlimited.push(false);
      capacity.push(capacity[row]!);
    }
  }
  const onBank = (task: Task, row: number, people: number) => {
    const number = bankNumber.get(`${row} ${bankOf(manning.zones, task)}`);
    return number === undefined ? [] : [{ of: number, amount: people }];
  };

  const skilledHeld = (row: number, skilled: readonly Skilled[]) =>
    skilled.flatMap(({ skill, people }) => {
      const number = skillNumber.get(`${row} ${skill}`);
      return number === undefined ? [] : [{ of: number, amount: people }];
    });
  const skilledAtWork = (task: Task, { crews }: Settled) =>
    task.needs.length === crews.length
      ? crews.flatMap(({ crew, people }, at) => {
          const row = work.crews.findIndex(({ id }) => id === crew);
          return row === -1
            ? []
            : skilledHeld(row, skilledOf(task.needs[at]!, work.crews[row]!, people));
        })
      : [];
  const equipmentHeld = (task: Task) =>
    (task.equipment ?? []).flatMap(({ id, count }) => {
      const number = equipmentNumber.get(id);
      return number === undefined ? [] : [{ of: number, amount: count }];
    });
  const zonesHeld = (task: Task, people: number) =>
    task.zones.flatMap((zone) => {
      const number = zoneNumber.get(zone);
      const amount = number === undefined ? 0 : task.keepOff ? capacity[number]! : people;
      return number === undefined || amount === 0 ? [] : [{ of: number, amount }];
    });
  const held = (task: Task, settled: Settled) => {
    const crews = settled.crews.flatMap(({ crew, people }) => {
      const number = crewNumber.get(crew);
      return number === undefined || people === 0 ? [] : [{ of: number, amount: people }];
    });
    return [
      ...crews,
      ...zonesHeld(task, crowdOf(task, settled)),
      ...equipmentHeld(task),
      ...skilledAtWork(task, settled),
    ];
  };

  const useHead = [0];
  const useOf: number[] = [];
  const useAmount: number[] = [];
  const users = new Int32Array(of.length);
  for (const [number, task] of tasks.entries()) {
    const wanted = new Set<number>();
    for (let at = wayHead[number]!; at < wayHead[number + 1]!; at += 1) {
      const way = ways[at]!;
      // Work without length holds nothing.
      const crews = way.crews.filter(({ people }) => people > 0);
      const uses = [
        ...crews.map(({ crew, people }) => ({ of: crew, amount: people })),
        ...zonesHeld(task, way.people),
        ...equipmentHeld(task),
        ...crews.flatMap(({ crew, skilled }) => skilledHeld(crew, skilled)),
        ...crews.flatMap(({ crew, people }) => onBank(task, crew, people)),
      ];
      for (const use of way.seconds > 0 ? uses : []) {
        useOf.push(use.of);
        useAmount.push(use.amount);
        wanted.add(use.of);
      }
      useHead.push(useOf.length);
    }
    for (const number of wanted) {
      users[number]! += 1;
    }
  }

  const busy: { from?: number; until: number; amount: number }[][] = of.map(({ row }, number) =>
    number < crewNumber.size ? absences(manning.strengths[row]!, capacity[number]!) : [],
  );
  for (const task of work.tasks) {
    const settled = past.tasks.get(task.id);
    if (settled?.atWork) {
      const there = settled.crews.flatMap(({ crew, people }) =>
        onBank(task, crewNumber.get(crew) ?? -1, people),
      );
      for (const { of: number, amount } of [...held(task, settled), ...there]) {
        busy[number]!.push({ until: settled.finish, amount });
      }
    }
  }
  return {
    of,
    unlimited,
    uses: {
      capacity: Int32Array.from(capacity),
      crewCount: crewNumber.size,
      across: Int32Array.from(across),
      users,
      busy,
      useHead: Int32Array.from(useHead),
      useOf: Int32Array.from(useOf),
      useAmount: Int32Array.from(useAmount),
    },
    held,
  };
}

/** The times when a crew is weaker than at its strongest, and by how many. */
function absences(steps: readonly StrengthStep[], most: number) {
  return steps.flatMap(({ from, people }, at) => {
    const until = steps[at + 1]?.from ?? Number.POSITIVE_INFINITY;
    return people < most ? [{ from, until, amount: most - people }] : [];
  });
}

/** People whom a task at work has in each of its zones: those told, or the usual ones where none were. */
function crowdOf(task: Task, settled: Settled): number {
  return settled.crews.length > 0
    ? settled.crews.reduce((sum, { people }) => sum + people, 0)
    : task.needs.reduce((sum, need) => sum + need.people.usual, 0);
}

type Crowd = { people: number; keptOff: boolean };

/** For each zone the most people who could ever be in it at once, and whether it is ever closed to others. */
function crowdsOf(
  manning: Manning,
  past: SettledPast,
  tasks: readonly Task[],
  wayHead: readonly number[],
  ways: readonly Way[],
): Map<string, Crowd> {
  const crowds = new Map<string, Crowd>();
  const add = (task: Task, people: number) => {
    for (const zone of task.zones) {
      const crowd = crowds.get(zone) ?? { people: 0, keptOff: false };
      crowd.people += people;
      crowd.keptOff ||= task.keepOff;
      crowds.set(zone, crowd);
    }
  };
  for (const [number, task] of tasks.entries()) {
    const own = ways.slice(wayHead[number]!, wayHead[number + 1]!);
    add(
      task,
      own.reduce((most, way) => Math.max(most, way.people), 0),
    );
  }
  for (const task of manning.work.tasks) {
    const settled = past.tasks.get(task.id);
    if (settled?.atWork) {
      add(task, crowdOf(task, settled));
    }
  }
  return crowds;
}
