import { type Refusal, refusal } from '../refusal.ts';
import { bad, good, type Result } from '../result.ts';
import { plannedSeconds } from '../tasks/expected.ts';
import type { Need, Task } from '../tasks/task.ts';
import type { Crew, Work } from '../tasks/work.ts';
import type { Manning } from './manning.ts';
import { secondsNotAfter, secondsNotBefore } from './seconds.ts';

/** One way to man a task: which crews with how many people, and what follows from it. Times in seconds. */
export type Way = {
  /** Rows in `work.crews`, in the order of the task's needs. */
  readonly crews: readonly { readonly crew: number; readonly people: number }[];
  /** People at work in each of the task's zones. */
  readonly people: number;
  /** Minutes with these people over minutes with the usual people. */
  readonly stretch: number;
  readonly seconds: number;
  /** Not before the last of its crews comes on, finished when the first of them goes. */
  readonly from: number;
  readonly to: number;
};

/** A joint task of many needs can be manned in more ways than are worth trying: enough to choose from. */
const mostWays = 64;
const mostTries = 20_000;

/**
 * All ways to man `task`, of which `left` (0 to 1) is still to be done. Each need gets a crew of its own that has the
 * skill, with the usual people or what the crew has and the zones have room for, down to the least; then the work
 * stretches. A need for nobody is met by the first crew it names, without taking anyone.
 * Refuses with `no-crew-can`, `crew-too-small`, `zone-too-small` or `window-too-short`.
 */
export function waysOf(manning: Manning, task: Task, left: number): Result<Way[], Refusal> {
  const room = roomFor(manning, task);
  if (!manning.crews) {
    const people = fitted(task.needs, task.needs.map(usual), room.people);
    return people
      ? good([wayWith(manning, task, left, null, people)])
      : bad(zoneTooSmall(task, room));
  }
  const candidates: number[][] = [];
  for (const need of task.needs) {
    const able = ableCrews(manning.work, task, need);
    if (!able.ok) {
      return able;
    }
    candidates.push(able.value);
  }
  const ways: Way[] = [];
  let why = noCrewCan(task, 'needs a crew of its own for each part of the work');
  let tries = 0;
  const chosen: number[] = [];
  const choose = (need: number): void => {
    if (ways.length >= mostWays || tries >= mostTries) {
      return;
    }
    if (need < candidates.length) {
      for (const crew of candidates[need]!) {
        if (crew === nobody || !chosen.includes(crew)) {
          chosen.push(crew);
          choose(need + 1);
          chosen.pop();
        }
      }
      return;
    }
    tries += 1;
    const has = task.needs.map((one, at) => peopleFrom(manning.work, one, chosen[at]!));
    const people = fitted(task.needs, has, room.people);
    if (!people) {
      why = zoneTooSmall(task, room);
      return;
    }
    const way = wayWith(manning, task, left, chosen, people);
    if (way.from + way.seconds <= way.to) {
      ways.push(way);
    } else {
      why = windowTooShort(task, way);
    }
  };
  choose(0);
  return ways.length > 0 ? good(ways) : bad(why);
}

/** Stands for a crew where nobody is needed. */
const nobody = -1;

function usual(need: Need): number {
  return need.people.usual;
}

function ableCrews(work: Work, task: Task, need: Need): Result<number[], Refusal> {
  const { anyOf, people, skill } = need;
  if (people.usual === 0) {
    const named = work.crews.findIndex(({ id }) => anyOf.includes(id));
    return good([named === -1 ? nobody : named]);
  }
  const rows = work.crews.map((_, row) => row);
  const meant = rows.filter((row) => isMeant(work.crews[row]!, anyOf));
  const able = meant.filter(
    (row) => skill === undefined || work.crews[row]!.skills.includes(skill),
  );
  if (able.length === 0) {
    const wants = anyOf.length > 0 ? `wants ${anyOf.join(' or ')}` : 'wants any crew';
    return bad(noCrewCan(task, skill === undefined ? wants : `${wants} with the skill ${skill}`));
  }
  const least = Math.max(1, people.least);
  const enough = able.filter((row) => work.crews[row]!.people >= least);
  if (enough.length === 0) {
    const largest = able.reduce((one, other) =>
      work.crews[other]!.people > work.crews[one]!.people ? other : one,
    );
    return bad(crewTooSmall(task, work.crews[largest]!, least));
  }
  return good(enough);
}

/** Attached people (medic, boat, drivers) do only what names them. */
function isMeant(crew: Crew, anyOf: readonly string[]): boolean {
  return anyOf.length === 0 ? !crew.attached : anyOf.includes(crew.id);
}

function peopleFrom(work: Work, need: Need, crew: number): number {
  return crew === nobody ? 0 : Math.min(need.people.usual, work.crews[crew]!.people);
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

/** Sends people away, each time where the work stretches least, until the rest have room; null when they never do. */
function fitted(needs: readonly Need[], wanted: readonly number[], room: number): number[] | null {
  const people = [...wanted];
  let sum = people.reduce((total, count) => total + count, 0);
  while (sum > room) {
    let best = -1;
    let bestStretch = Number.POSITIVE_INFINITY;
    for (const [at, need] of needs.entries()) {
      const fewer = people[at]! - 1;
      if (fewer >= Math.max(1, need.people.least) && need.people.usual / fewer < bestStretch) {
        best = at;
        bestStretch = need.people.usual / fewer;
      }
    }
    if (best === -1) {
      return null;
    }
    people[best]! -= 1;
    sum -= 1;
  }
  return people;
}

function wayWith(
  { work, shape }: Manning,
  task: Task,
  left: number,
  chosen: readonly number[] | null,
  people: readonly number[],
): Way {
  const stretch = stretchOf(task.needs, people);
  let from = 0;
  let to = Number.POSITIVE_INFINITY;
  const crews: { crew: number; people: number }[] = [];
  for (const [at, crew] of (chosen ?? []).entries()) {
    if (crew === nobody) {
      continue;
    }
    crews.push({ crew, people: people[at]! });
    if (people[at]! > 0) {
      from = Math.max(from, secondsNotBefore(work.crews[crew]!.from ?? 0));
      to = Math.min(to, secondsNotAfter(work.crews[crew]!.to ?? Number.POSITIVE_INFINITY));
    }
  }
  const sum = people.reduce((total, count) => total + count, 0);
  const seconds = plannedSeconds(task.minutes, shape, stretch * left);
  return { crews, people: sum, stretch, seconds, from, to };
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

function noCrewCan(task: Task, wants: string): Refusal {
  const sentence = `No crew can do ${named(task)}: it ${wants}. Add such a crew, or change who may do it.`;
  return refusal('no-crew-can', sentence, [task.id]);
}

function crewTooSmall(task: Task, crew: Crew, least: number): Refusal {
  const sentence = `${named(task)} takes at least ${least} people of one crew, and ${crew.name} has ${crew.people}. Put people into the crew, or lower the least.`;
  return refusal('crew-too-small', sentence, [task.id, crew.id]);
}

function zoneTooSmall(task: Task, room: Room): Refusal {
  const sentence = `${named(task)} takes more people than ${room.zone} has room for (${room.people}). Take fewer people, or split the task.`;
  return refusal('zone-too-small', sentence, [task.id]);
}

function windowTooShort(task: Task, way: Way): Refusal {
  const hours = Math.max(0, way.to - way.from) / 60;
  const sentence = `${named(task)} takes ${way.seconds / 60} minutes, and its crew is there for ${hours}. Give the crew longer hours, or name another crew.`;
  return refusal('window-too-short', sentence, [task.id]);
}

function named(task: Task): string {
  return task.name === task.id ? `Task ${task.id}` : `${task.name} (${task.id})`;
}
