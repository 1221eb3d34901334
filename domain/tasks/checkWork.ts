import type { Fault } from '../fault.ts';
import { strengths } from '../schedule/strength.ts';
import { findLoop } from './graph.ts';
import type { Minutes, People } from './task.ts';
import type { Work } from './work.ts';

/** Longest time that a task, a wait or a crew's hours may name, in minutes: about two years. */
export const longestMinutes = 1_000_000;

/** Most tasks that an order of work may have. */
export const mostTasks = 20_000;

/**
 * Everything wrong with an order of work that its schema cannot say: doubled ids and numbers, things named that do
 * not exist, estimates and people out of order, more than one opening, a loop. Empty when nothing is. Each fault's
 * `path` leads to it in the work (`/tasks/3/minutes`).
 */
export function workFaults(work: Work): Fault[] {
  const faults: Fault[] = [];
  const add = (path: string, found: string, expected: string) => {
    faults.push({ path, found, expected });
  };
  if (work.tasks.length > mostTasks) {
    add('/tasks', `${work.tasks.length} tasks`, `at most ${mostTasks} tasks`);
    return faults;
  }

  const tasks = idsOf('tasks', work.tasks, add);
  const crews = idsOf('crews', work.crews, add);
  const zones = idsOf('zones', work.zones, add);
  const loads = idsOf('loads', work.loads, add);
  const equipment = new Map((work.equipment ?? []).map(({ id, count }) => [id, count]));
  idsOf('equipment', work.equipment ?? [], add);
  const numbers = new Set<number>();
  let opens: string | null = null;

  for (const [row, task] of work.tasks.entries()) {
    const path = `/tasks/${row}`;
    if (numbers.has(task.number)) {
      add(`${path}/number`, String(task.number), 'a number that no other task has');
    }
    numbers.add(task.number);
    if (!inOrder(task.minutes)) {
      const { quick, likely, slow } = task.minutes;
      add(
        `${path}/minutes`,
        `${quick}, ${likely}, ${slow}`,
        `quick, likely and slow in rising order, from 0 to ${longestMinutes}`,
      );
    }
    for (const [at, need] of task.needs.entries()) {
      if (!peopleInOrder(need.people)) {
        const { least, usual, most } = need.people;
        add(
          `${path}/needs/${at}/people`,
          `${least}, ${usual}, ${most}`,
          'least, usual and most in rising order',
        );
      }
      for (const [some, { skill, people }] of (need.with ?? []).entries()) {
        if (people > need.people.usual) {
          const expected = `at most the usual ${need.people.usual}`;
          add(`${path}/needs/${at}/with/${some}/people`, `${people} with ${skill}`, expected);
        }
      }
      for (const crew of need.anyOf) {
        // Without crews the names in the tasks are only kept, not planned with.
        if (work.crews.length > 0 && !crews.has(crew)) {
          add(`${path}/needs/${at}/anyOf`, crew, 'a crew of this order of work');
        }
      }
    }
    for (const zone of task.zones) {
      if (!zones.has(zone)) {
        add(`${path}/zones`, zone, 'a zone of this order of work');
      }
    }
    for (const load of task.loads) {
      if (!loads.has(load)) {
        add(`${path}/loads`, load, 'a load of this order of work');
      }
    }
    for (const [at, { id, count }] of (task.equipment ?? []).entries()) {
      const there = equipment.get(id);
      const held = `${path}/equipment/${at}`;
      // Without a list the names in the tasks are only kept, as with crews.
      if (work.equipment && there === undefined) {
        add(`${held}/id`, id, 'equipment of this order of work');
      } else if (there !== undefined && count > there) {
        add(`${held}/count`, `${count} of ${id}`, `at most the ${there} there are`);
      }
      if (task.equipment?.findIndex((one) => one.id === id) !== at) {
        add(`${held}/id`, `${id} twice`, 'each kind of equipment once');
      }
    }
    for (const redo of task.hold?.redo ?? []) {
      if (!tasks.has(redo)) {
        add(`${path}/hold/redo`, redo, 'a task of this order of work');
      }
    }
    for (const crew of task.fixed?.crews ?? []) {
      // Without crews the names in the tasks are only kept.
      if (work.crews.length > 0 && !crews.has(crew)) {
        add(`${path}/fixed/crews`, crew, 'a crew of this order of work');
      }
    }
    if ((task.fixed?.start ?? 0) > longestMinutes) {
      add(`${path}/fixed/start`, String(task.fixed?.start), `minutes up to ${longestMinutes}`);
    }
    if (task.opens && opens !== null) {
      add(`${path}/opens`, `${task.id} opens, and so does ${opens}`, 'one task that opens');
    }
    opens = task.opens ? task.id : opens;
  }

  for (const [row, crew] of work.crews.entries()) {
    if (crew.to !== undefined && crew.to <= (crew.from ?? 0)) {
      add(`/crews/${row}/to`, String(crew.to), `later than ${crew.from ?? 0}`);
    }
    for (const [at, { skill }] of (crew.skilled ?? []).entries()) {
      if (crew.skilled?.findIndex((one) => one.skill === skill) !== at) {
        add(`/crews/${row}/skilled/${at}/skill`, `${skill} twice`, 'each skill once');
      }
    }
    strengthFaults(work, row, crews, add);
    spellFaults(`/crews/${row}/rests`, crew.rests ?? [], add);
  }
  spellFaults('/dark/spells', work.dark?.spells ?? [], add);
  linkFaults(work, tasks, add);
  if (faults.length === 0) {
    overLent(work, add);
  }
  const loop = faults.length === 0 ? findLoop(work) : null;
  if (loop) {
    add('/links', loopSentence(loop), 'an order without a loop');
  }
  return faults;
}

/** A loop in words: "a, then b, then a again". */
export function loopSentence(loop: readonly string[]): string {
  return `${[...loop, loop[0]].join(', then ')} again`;
}

type Add = (path: string, found: string, expected: string) => void;

function idsOf(part: string, things: readonly { readonly id: string }[], add: Add): Set<string> {
  const ids = new Set<string>();
  for (const [row, { id }] of things.entries()) {
    if (ids.has(id)) {
      add(`/${part}/${row}/id`, id, `an id that none of the other ${part} has`);
    }
    ids.add(id);
  }
  return ids;
}

/** Steps of strength out of order, people lent to nobody, and more lent than there are. */
function strengthFaults(work: Work, row: number, crews: ReadonlySet<string>, add: Add): void {
  const { id, strength = [], lent = [] } = work.crews[row]!;
  for (const [at, { from }] of strength.entries()) {
    const before = strength[at - 1];
    if (from > longestMinutes || (before && from <= before.from)) {
      const after = before ? `later than ${before.from}, and ` : '';
      add(
        `/crews/${row}/strength/${at}/from`,
        String(from),
        `${after}minutes up to ${longestMinutes}`,
      );
    }
  }
  for (const [at, { crew, from, to = longestMinutes }] of lent.entries()) {
    const path = `/crews/${row}/lent/${at}`;
    if (crew === id || !crews.has(crew)) {
      add(`${path}/crew`, crew, 'another crew of this order of work');
    }
    if (!(to > from && to <= longestMinutes)) {
      add(`${path}/to`, String(to), `later than ${from}, and minutes up to ${longestMinutes}`);
    }
  }
}

/** Crews of which more people would be lent, lost or resting than they have, by the first time that happens. */
function overLent(work: Work, add: Add): void {
  for (const [row, steps] of strengths(work).entries()) {
    const below = steps.find(({ people }) => people < 0);
    if (below) {
      const { lent = [], rests = [] } = work.crews[row]!;
      const away = rests.some(({ people }) => people !== undefined) ? 'lent or resting' : 'lent';
      const found = `${-below.people} more people ${away} than there are at minute ${below.from / 60}`;
      const part = away === 'lent' || lent.length > 0 ? 'lent' : 'rests';
      add(`/crews/${row}/${part}`, found, 'at most the people the crew then has');
    }
  }
}

/** Rests and nights: each ends after it begins, and the next begins no earlier than that. */
function spellFaults(
  path: string,
  spells: readonly { readonly from: number; readonly to: number }[],
  add: Add,
): void {
  for (const [at, { from, to }] of spells.entries()) {
    if (!(to > from && to <= longestMinutes)) {
      add(
        `${path}/${at}/to`,
        String(to),
        `later than ${from}, and minutes up to ${longestMinutes}`,
      );
    }
    const before = spells[at - 1];
    if (before && from < before.to) {
      add(
        `${path}/${at}/from`,
        String(from),
        `no earlier than ${before.to}, when the last one ends`,
      );
    }
  }
}

function linkFaults(work: Work, tasks: ReadonlySet<string>, add: Add): void {
  const seen = new Set<string>();
  for (const [row, link] of work.links.entries()) {
    for (const end of ['from', 'to'] as const) {
      if (!tasks.has(link[end])) {
        add(`/links/${row}/${end}`, link[end], 'a task of this order of work');
      }
    }
    if (link.from === link.to) {
      add(`/links/${row}`, link.to, 'a task that does not come after itself');
    }
    if (!(Math.abs(link.wait) <= longestMinutes)) {
      add(`/links/${row}/wait`, String(link.wait), `minutes up to ${longestMinutes}`);
    }
    const key = `${link.from} ${link.to} ${link.counts}`;
    if (seen.has(key)) {
      add(`/links/${row}`, `${link.to} after the ${link.counts} of ${link.from} twice`, 'once');
    }
    seen.add(key);
  }
}

function inOrder({ quick, likely, slow }: Minutes): boolean {
  return 0 <= quick && quick <= likely && likely <= slow && slow <= longestMinutes;
}

function peopleInOrder({ least, usual, most }: People): boolean {
  return 0 <= least && least <= usual && usual <= most;
}
