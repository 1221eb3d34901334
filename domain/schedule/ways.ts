import type { Refusal } from '../refusal.ts';
import { bad, good, type Result } from '../result.ts';
import { plannedSeconds } from '../tasks/expected.ts';
import type { Need, Skilled, Task } from '../tasks/task.ts';
import { againstWay } from './againstWay.ts';
import { type Candidate, type Choice, eachChoice, spreadChoices } from './crewChoices.ts';
import { isFixed } from './fixed.ts';
import type { Manning } from './manning.ts';
import { finishAt, type Pace } from './pace.ts';
import { countsBetween, fitted, spread } from './peopleCounts.ts';
import { secondsNotAfter, secondsNotBefore } from './seconds.ts';
import { ableCrews, mostFrom, nobody, peopleFrom, skilledOf, type Wanted } from './whoCan.ts';
import { fixedAgainst, noCrewCan, zoneTooSmall } from './whyNoWay.ts';

/** So many people of a crew, and how many of them for what only some of the crew can do. */
type WayCrew = {
  readonly crew: number;
  readonly people: number;
  readonly skilled: readonly Skilled[];
};

/** One way to man a task: which crews with how many people, and what follows from it. Times in seconds. */
export type Way = {
  /** Rows in `work.crews`, in the order of the task's needs. */
  readonly crews: readonly WayCrew[];
  /** People at work in each of the task's zones. */
  readonly people: number;
  /** Minutes with these people over minutes with the usual people. */
  readonly stretch: number;
  /** By day and without rests. */
  readonly seconds: number;
  readonly pace: Pace | null;
  /** Not before the last of its crews comes on, finished when the first of them goes. */
  readonly from: number;
  readonly to: number;
};

/** The ways to man a task. */
export type Ways = {
  /** First those with the usual people, or what there is of them. */
  readonly list: readonly Way[];
  /** How many of the list those are. */
  readonly usual: number;
  /** What bounds go by: the list, and where that leaves ways out, others that take no more people and no longer. */
  readonly bounding: readonly Way[];
};

/** A task can be manned in more ways than are worth trying: enough to choose from. */
const mostWays = 64;
const mostTries = 20_000;
const attempts = 3 * mostWays;

/** Ways of all tasks together that have other than the usual people, about: so many are still quick to lay out. */
const mostInAll = 60_000;

/**
 * The ways to man `task`, of which `left` (0 to 1) is still to be done. Each need gets a crew of its own that has the
 * skill, with the usual people or what the crew has and the zones have room for, down to the least. Then, with the same
 * crews, all other counts between least and most that are worth having: the work stretches or goes faster. A need for
 * nobody is met by the first crew it names, without taking anyone.
 * Crews that the leader has fixed take part in all of them, and all begin when he has fixed the start, unless that has
 * gone by.
 * Refuses with `no-crew-can`, `crew-too-small`, `zone-too-small`, `window-too-short`, `light-too-short` or
 * `fixed-blocked`.
 */
export function waysOf(manning: Manning, task: Task, left: number, now = 0): Result<Ways, Refusal> {
  const wanted = { manning, task, left, now };
  const room = roomFor(manning, task);
  if (!manning.crews) {
    return withoutCrews(wanted, room);
  }
  const candidates = candidatesFor(wanted);
  if (!candidates.ok) {
    return candidates;
  }
  const found = new FoundWays(wanted, room);
  const isWhole = addUsual(found, candidates.value);
  const usualWays = found.ways.size;
  const between = addOtherCounts(found);
  if (found.ways.size === 0) {
    return bad(found.why);
  }
  const list = [...found.ways.values()];
  const usual = usualWays > 0 ? usualWays : list.length;
  if (!isWhole) {
    return good({ list, usual, bounding: [leftOutOf(wanted, candidates.value)] });
  }
  return good({ list, usual, bounding: between.length > 0 ? [...list, ...between] : list });
}

/** The one way where nobody counts people: as many as anybody wants and the zones have room for. */
function withoutCrews(wanted: Wanted, room: Room): Result<Ways, Refusal> {
  const { needs } = wanted.task;
  const usual = needs.map(({ people }) => people.usual);
  const people = fitted(needs, usual, room.people);
  if (!people) {
    return bad(zoneTooSmall(wanted.task, room));
  }
  const way = wayWith(wanted, null, people);
  const against = againstWay(wanted, way);
  return against ? bad(against) : good({ list: [way], usual: 1, bounding: [way] });
}

/** For each need the crews that can meet it, and with how many of their people. */
function candidatesFor(wanted: Wanted): Result<Candidate[][], Refusal> {
  const candidates: Candidate[][] = [];
  for (const need of wanted.task.needs) {
    const able = ableCrews(wanted, need);
    if (!able.ok) {
      return able;
    }
    candidates.push(able.value.map((crew) => ({ crew, people: peopleFrom(wanted, need, crew) })));
  }
  return good(candidates);
}

/** The ways found so far to man one task, no two of them the same. */
class FoundWays {
  readonly wanted: Wanted;
  readonly room: Room;
  readonly ways = new Map<string, Way>();
  /** The crews that were chosen, each choice once. */
  readonly choices = new Map<string, readonly number[]>();
  /** What stood against the last way that could not be added. */
  why: Refusal;
  readonly #pinned: readonly number[];

  constructor(wanted: Wanted, room: Room) {
    const { task, manning } = wanted;
    this.wanted = wanted;
    this.room = room;
    this.why = noCrewCan(task, 'needs a crew of its own for each part of the work');
    this.#pinned = (task.fixed?.crews ?? []).map((id) =>
      manning.work.crews.findIndex((crew) => crew.id === id),
    );
  }

  /** Adds the way with these crews and people. False when it is known already or something stands against it. */
  add(crews: readonly number[], people: readonly number[]): boolean {
    const same = sameAs(this.wanted.task, crews, people);
    if (this.ways.has(same)) {
      return false;
    }
    const way = wayWith(this.wanted, crews, people);
    const against = againstWay(this.wanted, way);
    if (against) {
      this.why = against;
      return false;
    }
    this.ways.set(same, way);
    return true;
  }

  /** Adds the way with these crews, who have the leader's among them, and as many of their people as have room. */
  choose({ crews, people: has }: Choice): boolean {
    const { task, manning } = this.wanted;
    const missing = this.#pinned.find((crew) => !crews.includes(crew));
    if (missing !== undefined) {
      this.why = fixedAgainst(task, `${manning.work.crews[missing]!.name} cannot take part in it`);
      return false;
    }
    const people = fitted(task.needs, has, this.room.people);
    if (!people) {
      this.why = zoneTooSmall(task, this.room);
      return false;
    }
    this.choices.set(crews.join(), [...crews]);
    return this.add(crews, people);
  }

  clear(): void {
    this.ways.clear();
    this.choices.clear();
  }
}

/** Adds the ways with the usual people, or what there is of them. False when there are too many: then only some. */
function addUsual(found: FoundWays, candidates: readonly (readonly Candidate[])[]): boolean {
  let tries = 0;
  const isWhole = eachChoice(candidates, nobody, (choice) => {
    tries += 1;
    found.choose(choice);
    return found.ways.size > mostWays || tries >= mostTries ? 'enough' : 'more';
  });
  if (!isWhole) {
    found.clear();
    const take = (choice: Choice) => found.ways.size < mostWays && found.choose(choice);
    spreadChoices(candidates, nobody, attempts, take);
  }
  return isWhole;
}

/** Adds other counts of people of the crews chosen so far. Returns what stands for the counts left out between them. */
function addOtherCounts(found: FoundWays): Way[] {
  const { wanted, room, ways, choices } = found;
  const { needs } = wanted.task;
  const between: Way[] = [];
  const spare = Math.min(mostWays, mostInAll / wanted.manning.work.tasks.length) - ways.size;
  const each = Math.max(0, Math.floor(spare / choices.size));
  for (const crews of choices.values()) {
    const most = crews.map((crew, at) => mostFrom(wanted, needs[at]!, crew));
    const { some, gaps } = spread(countsBetween(needs, most, room.people), each);
    for (const people of some) {
      found.add(crews, people);
    }
    for (const { quickest, fewest } of gaps) {
      between.push(wayWith(wanted, crews, fewest, stretchOf(needs, quickest)));
    }
  }
  return between;
}

/** What makes a way the same as another: who is taken for what, and how long it takes. */
function sameAs({ needs }: Task, crews: readonly number[], people: readonly number[]): string {
  const taken = crews.map((crew, at) => {
    const { skill, with: some } = needs[at]!;
    const able = skill === undefined && some === undefined ? '' : JSON.stringify([skill, some]);
    return `${crew}:${people[at]}${able}`;
  });
  return taken.length === 1 ? taken[0]! : `${taken.sort().join()} ${stretchOf(needs, people)}`;
}

/** Stands for ways that are not listed, whichever they are: by nobody, and with the most people that any crew can give. */
function leftOutOf(wanted: Wanted, candidates: readonly (readonly Candidate[])[]): Way {
  const { needs } = wanted.task;
  const people = candidates.map((own, at) =>
    Math.max(...own.map(({ crew }) => mostFrom(wanted, needs[at]!, crew))),
  );
  const stretch = stretchOf(needs, people);
  const seconds = plannedSeconds(wanted.task.minutes, wanted.manning.shape, stretch * wanted.left);
  const to = Number.POSITIVE_INFINITY;
  return { crews: [], people: 0, stretch, seconds, pace: null, from: 0, to };
}

type Room = { readonly people: number; readonly zone: string };

function roomFor(manning: Manning, task: Task): Room {
  let tightest: Room = { people: Number.POSITIVE_INFINITY, zone: '' };
  for (const id of task.zones) {
    const zone = manning.zones.get(id);
    if (zone?.room !== undefined && zone.room < tightest.people) {
      tightest = { people: zone.room, zone: zone.name };
    }
  }
  return tightest;
}

function wayWith(
  { manning, task, left, now }: Wanted,
  chosen: readonly number[] | null,
  people: readonly number[],
  stretch = stretchOf(task.needs, people),
): Way {
  const { work, shape } = manning;
  let from = 0;
  let to = Number.POSITIVE_INFINITY;
  const atWork: string[] = [];
  const crews: WayCrew[] = [];
  for (const [at, crew] of (chosen ?? []).entries()) {
    if (crew === nobody) {
      continue;
    }
    const skilled = skilledOf(task.needs[at]!, work.crews[crew]!, people[at]!);
    crews.push({ crew, people: people[at]!, skilled });
    if (people[at]! > 0) {
      atWork.push(work.crews[crew]!.id);
      from = Math.max(from, secondsNotBefore(work.crews[crew]!.from ?? 0));
      to = Math.min(to, secondsNotAfter(work.crews[crew]!.to ?? Number.POSITIVE_INFINITY));
    }
  }
  const sum = people.reduce((total, count) => total + count, 0);
  const seconds = plannedSeconds(task.minutes, shape, stretch * left);
  // Work without length rests from nothing.
  const pace = seconds === 0 ? null : manning.paceOf(task, atWork);
  if (isFixed(task, now)) {
    from = Math.max(from, secondsNotBefore(task.fixed!.start!));
    to = Math.min(to, pace ? finishAt(pace, from, seconds) : from + seconds);
  }
  return { crews, people: sum, stretch, seconds, pace, from, to };
}

/**
 * Minutes with these people over minutes with the usual people. The need that is shortest of people sets the pace;
 * more than `most` help no further. `people` follows the order of `needs`.
 */
export function stretchOf(needs: readonly Need[], people: readonly number[]): number {
  let stretch = 0;
  for (const [at, { people: wanted }] of needs.entries()) {
    const count = Math.min(people[at] ?? wanted.usual, wanted.most);
    if (wanted.usual > 0 && count > 0) {
      stretch = Math.max(stretch, wanted.usual / count);
    }
  }
  return stretch === 0 ? 1 : stretch;
}
