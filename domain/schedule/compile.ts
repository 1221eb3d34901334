import type { Refusal } from '../refusal.ts';
import { bad, good, type Result } from '../result.ts';
import type { Task } from '../tasks/task.ts';
import { fixedBlocked, isFixed } from './fixed.ts';
import { type LinkArrays, linkArrays } from './linkArrays.ts';
import { lastLoad, type Manning } from './manning.ts';
import { openingTasks } from './opening.ts';
import type { Pace } from './pace.ts';
import type { Busy } from './profile.ts';
import { type Resources, resourcesOf } from './resources.ts';
import type { SettledPast } from './settled.ts';
import { type Way, waysOf } from './ways.ts';

/**
 * The work still to be planned, in flat arrays: times in seconds after the start of the build, tasks numbered so that
 * links only lead from a lower to a higher number. Links into task `t` stand at `beforeHead[t]` up to
 * `beforeHead[t + 1]`, its ways at `wayHead[t]` up to `wayHead[t + 1]`, the resources that way `w` holds at
 * `useHead[w]` up to `useHead[w + 1]`. Every search and bound reads this and nothing else.
 */
export type Compiled = Omit<LinkArrays, 'numbers'> & {
  readonly count: number;
  /** Earliest start by stores, by now and by links from what is settled. */
  readonly release: Float64Array;
  readonly wayHead: Int32Array;
  /** Where a task's ways with the usual people end; up to its last way others follow. */
  readonly usualEnd: Int32Array;
  /** Share of the tasks that have ways with other than the usual people. */
  readonly otherPeople: number;
  /** Seconds that each way takes by day and without rests; `finishOf` says when it is done. */
  readonly seconds: Float64Array;
  /** At what pace each way goes on: null where nothing slows or stops it. */
  readonly pace: readonly (Pace | null)[];
  readonly from: Float64Array;
  readonly to: Float64Array;
  readonly useHead: Int32Array;
  readonly useOf: Int32Array;
  readonly useAmount: Int32Array;
  /** People of each crew, then room of each zone that can bind, then pieces of each kind of equipment. */
  readonly capacity: Int32Array;
  /** How many of the resources are crews. */
  readonly crewCount: number;
  /** Seconds that people take from bank to bank; 0 where none do. */
  readonly crossing: number;
  /** By resource: those of a crew who are on one bank, its number for the other bank; for all else -1. */
  readonly across: Int32Array;
  /** 1 where a way has a pace of its own, or people who may have to cross: to place it takes more care. */
  readonly withCare: Uint8Array;
  /** How many tasks may hold each resource. */
  readonly users: Int32Array;
  readonly busy: Busy;
  /** 1 where the task's finish counts for the opening. */
  readonly goal: Uint8Array;
  /** 1 where the task is a goal or fixed, or something that such a task comes after. */
  readonly toOpen: Uint8Array;
  /** 1 where the leader has fixed the start: all its ways start then. */
  readonly fixed: Uint8Array;
  readonly anyFixed: boolean;
  /** Latest finish of the goals that are settled; nothing can open before. */
  readonly settledOpening: number;
};

/** The compiled work with what leads back from its numbers. */
export type Compilation = {
  readonly compiled: Compiled;
  /** The same with more freedom: where not all ways to man a task are among those above. Bounds read this. */
  readonly forBounds: Compiled;
  /** By number: the task and its ways. */
  readonly tasks: readonly Task[];
  readonly ways: readonly Way[];
  /** Links of all tasks, settled ones too, under numbers of their own. */
  readonly links: LinkArrays;
  /** By number: the number in `links`. */
  readonly numberInLinks: Int32Array;
  readonly resources: Resources;
};

/** Lays the work out flat for planning. Expects work without faults; refuses what cannot be manned. */
export function compile(manning: Manning, past: SettledPast): Result<Compilation, Refusal> {
  const { work } = manning;
  const links = linkArrays(work);
  const tasks: Task[] = [];
  const ways: Way[] = [];
  const wayHead = [0];
  const usualEnd: number[] = [];
  const bounding: Way[] = [];
  const boundingHead = [0];
  let anyLeftOut = false;
  // By number over all tasks: the number among those still to be planned, -1 where settled.
  const numbers = new Int32Array(links.rows.length).fill(-1);
  for (const [at, row] of links.rows.entries()) {
    const task = work.tasks[row]!;
    if (past.tasks.has(task.id)) {
      continue;
    }
    const found = waysOf(manning, task, past.left.get(task.id) ?? 1, past.now);
    if (!found.ok) {
      return bad(found.reason);
    }
    numbers[at] = tasks.length;
    tasks.push(task);
    const own = found.value;
    usualEnd.push(ways.length + own.usual);
    ways.push(...own.list);
    wayHead.push(ways.length);
    anyLeftOut ||= own.bounding !== own.list;
    bounding.push(...own.bounding);
    boundingHead.push(bounding.length);
  }
  const resources = resourcesOf(manning, past, tasks, wayHead, ways);
  const { crossing } = manning;
  const open = openLinks(links, numbers, tasks.length);
  const goal = openingTasks(work);
  const compiled: Compiled = {
    count: tasks.length,
    ...open,
    release: releases(manning, past, links, numbers, tasks),
    ...flatWays(wayHead, ways, crossing),
    usualEnd: Int32Array.from(usualEnd),
    otherPeople:
      usualEnd.filter((end, number) => end < wayHead[number + 1]!).length /
      Math.max(1, tasks.length),
    ...resources.uses,
    crossing,
    goal: Uint8Array.from(tasks, (task) => (goal.has(task.id) ? 1 : 0)),
    anyFixed: tasks.some((task) => isFixed(task, past.now)),
    toOpen: leadingTo(tasks, open, (task) => goal.has(task.id) || isFixed(task, past.now)),
    fixed: Uint8Array.from(tasks, (task) => (isFixed(task, past.now) ? 1 : 0)),
    settledOpening: settledOpening(goal, past),
  };
  const blocked = fixedBlocked(compiled, tasks);
  if (blocked) {
    return bad(blocked);
  }
  const numberInLinks = Int32Array.from(tasks, ({ id }) => links.numbers.get(id) as number);
  const forBounds = !anyLeftOut
    ? compiled
    : {
        ...compiled,
        ...flatWays(boundingHead, bounding, crossing),
        usualEnd: Int32Array.from(boundingHead.slice(1)),
        ...resourcesOf(manning, past, tasks, boundingHead, bounding).uses,
      };
  return good({ compiled, forBounds, tasks, ways, links, numberInLinks, resources });
}

function flatWays(wayHead: readonly number[], ways: readonly Way[], crossing: number) {
  return {
    wayHead: Int32Array.from(wayHead),
    seconds: Float64Array.from(ways, (way) => way.seconds),
    pace: ways.map((way) => way.pace),
    from: Float64Array.from(ways, (way) => way.from),
    to: Float64Array.from(ways, (way) => way.to),
    withCare: Uint8Array.from(ways, ({ pace }) => (pace || crossing > 0 ? 1 : 0)),
  };
}

type OpenLinks = Omit<LinkArrays, 'numbers'>;

/** The links between tasks still to be planned, under their numbers. */
function openLinks(links: LinkArrays, numbers: Int32Array, count: number): OpenLinks {
  const rows = links.rows.filter((_, at) => numbers[at] !== -1);
  const side = (head: Int32Array, other: Int32Array, fromStart: Uint8Array, wait: Float64Array) => {
    const newHead = new Int32Array(count + 1);
    const kept: number[] = [];
    for (let at = 0; at < numbers.length; at += 1) {
      if (numbers[at] === -1) {
        continue;
      }
      for (let link = head[at]!; link < head[at + 1]!; link += 1) {
        if (numbers[other[link]!] !== -1) {
          kept.push(link);
        }
      }
      newHead[numbers[at]! + 1] = kept.length;
    }
    return {
      head: newHead,
      other: Int32Array.from(kept, (link) => numbers[other[link]!]!),
      fromStart: Uint8Array.from(kept, (link) => fromStart[link]!),
      wait: Float64Array.from(kept, (link) => wait[link]!),
    };
  };
  const before = side(links.beforeHead, links.before, links.beforeFromStart, links.beforeWait);
  const after = side(links.afterHead, links.after, links.afterFromStart, links.afterWait);
  return {
    rows,
    beforeHead: before.head,
    before: before.other,
    beforeFromStart: before.fromStart,
    beforeWait: before.wait,
    afterHead: after.head,
    after: after.other,
    afterFromStart: after.fromStart,
    afterWait: after.wait,
  };
}

function releases(
  manning: Manning,
  past: SettledPast,
  links: LinkArrays,
  numbers: Int32Array,
  tasks: readonly Task[],
): Float64Array {
  const release = Float64Array.from(tasks, (task) =>
    Math.max(past.now, lastLoad(manning, task).in),
  );
  for (let from = 0; from < numbers.length; from += 1) {
    const settled = past.tasks.get(manning.work.tasks[links.rows[from]!]!.id);
    if (!settled) {
      continue;
    }
    for (let at = links.afterHead[from]!; at < links.afterHead[from + 1]!; at += 1) {
      const to = numbers[links.after[at]!]!;
      const counted = links.afterFromStart[at] ? settled.start : settled.finish;
      if (to !== -1) {
        release[to] = Math.max(release[to]!, counted + links.afterWait[at]!);
      }
    }
  }
  return release;
}

function leadingTo(
  tasks: readonly Task[],
  open: OpenLinks,
  wanted: (task: Task) => boolean,
): Uint8Array {
  const leads = Uint8Array.from(tasks, (task) => (wanted(task) ? 1 : 0));
  for (let from = tasks.length - 1; from >= 0; from -= 1) {
    for (let at = open.afterHead[from]!; at < open.afterHead[from + 1]!; at += 1) {
      if (leads[open.after[at]!] === 1) {
        leads[from] = 1;
      }
    }
  }
  return leads;
}

function settledOpening(goal: Set<string>, past: SettledPast): number {
  let latest = 0;
  for (const [id, { finish }] of past.tasks) {
    if (goal.has(id)) {
      latest = Math.max(latest, finish);
    }
  }
  return latest;
}
