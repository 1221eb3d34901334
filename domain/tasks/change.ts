import { type Static, type TSchema, Type } from 'typebox';
import type { Fault } from '../fault.ts';
import { bad, good, type Result } from '../result.ts';
import { workFaults } from './checkWork.ts';
import { Fixed, Id, Minutes, People, type Task } from './task.ts';
import { Crew, Lent, Link, Rest, Strength, type Work } from './work.ts';

const orNone = <Schema extends TSchema>(schema: Schema) =>
  Type.Optional(Type.Union([schema, Type.Null()]));

/** A change to the order of work that a leader tries before accepting it. */
export const Change = Type.Union([
  Type.Object(
    {
      kind: Type.Literal('task'),
      task: Id,
      minutes: Type.Optional(Minutes),
      /** One per need of the task, in order. */
      people: Type.Optional(Type.Array(People)),
      /** What no plan may do otherwise; null frees the task. */
      fixed: Type.Optional(Type.Union([Fixed, Type.Null()])),
    },
    { additionalProperties: false },
  ),
  Type.Object({ kind: Type.Literal('link-add'), link: Link }, { additionalProperties: false }),
  Type.Object(
    { kind: Type.Literal('link-remove'), from: Id, to: Id },
    { additionalProperties: false },
  ),
  /** Replaces the crew of that id, or adds it. */
  Type.Object({ kind: Type.Literal('crew'), crew: Crew }, { additionalProperties: false }),
  /** Who a crew is: its name, who leads it (null: nobody named), whether it is attached. All else of it stays. */
  Type.Object(
    {
      kind: Type.Literal('crew-name'),
      crew: Id,
      name: Crew.properties.name,
      chief: Type.Union([Type.String({ maxLength: 60 }), Type.Null()]),
      attached: Type.Boolean(),
    },
    { additionalProperties: false },
  ),
  /**
   * How many of a crew are there when. What is not named stays as it is, so that a strength told meanwhile holds.
   * Minutes after the start of the build; null is the whole build.
   */
  Type.Object(
    {
      kind: Type.Literal('crew-hours'),
      crew: Id,
      people: Type.Optional(Crew.properties.people),
      from: orNone(Type.Number({ minimum: 0 })),
      to: orNone(Type.Number({ minimum: 0 })),
      rests: Type.Optional(Type.Array(Rest)),
      lent: Type.Optional(Type.Array(Lent)),
      strength: Type.Optional(Type.Array(Strength)),
    },
    { additionalProperties: false },
  ),
  /** A load is expected at another time, minutes after the start of the build. */
  Type.Object(
    { kind: Type.Literal('load'), load: Id, arrives: Type.Number() },
    { additionalProperties: false },
  ),
]);
export type Change = Static<typeof Change>;

type CrewName = Extract<Change, { kind: 'crew-name' }>;

/** The change of when how many of a crew are there. */
export type CrewHours = Extract<Change, { kind: 'crew-hours' }>;

/** The crew with what the change names; all else of it stays. */
export function changedCrew(crew: Crew, change: CrewName | CrewHours): Crew {
  return change.kind === 'crew-name' ? named(crew, change) : atHours(crew, change);
}

/**
 * The order of work with all changes made, in their order; the given one is left as it is.
 * Every change that cannot be made, and everything wrong with the outcome, comes back as faults.
 */
export function applyChanges(work: Work, changes: readonly Change[]): Result<Work, Fault[]> {
  const faults: Fault[] = [];
  let changed = work;
  for (const [row, change] of changes.entries()) {
    const outcome = applyChange(changed, change, `/changes/${row}`);
    if (outcome.ok) {
      changed = outcome.value;
    } else {
      faults.push(outcome.reason);
    }
  }
  if (faults.length === 0) {
    faults.push(...workFaults(changed));
  }
  return faults.length === 0 ? good(changed) : bad(faults);
}

function applyChange(work: Work, change: Change, path: string): Result<Work, Fault> {
  switch (change.kind) {
    case 'task':
      return changeTask(work, change, path);
    case 'link-add':
      return good({ ...work, links: [...work.links, change.link] });
    case 'link-remove': {
      const links = work.links.filter(({ from, to }) => from !== change.from || to !== change.to);
      return links.length < work.links.length
        ? good({ ...work, links })
        : bad({ path, found: `${change.to} after ${change.from}`, expected: 'a link that exists' });
    }
    case 'crew': {
      const known = work.crews.some(({ id }) => id === change.crew.id);
      const crews = known
        ? work.crews.map((crew) => (crew.id === change.crew.id ? change.crew : crew))
        : [...work.crews, change.crew];
      return good({ ...work, crews });
    }
    case 'crew-name':
    case 'crew-hours': {
      const before = work.crews.find(({ id }) => id === change.crew);
      if (!before) {
        return bad({ path: `${path}/crew`, found: change.crew, expected: 'a crew that exists' });
      }
      const after = changedCrew(before, change);
      return good({ ...work, crews: work.crews.map((crew) => (crew === before ? after : crew)) });
    }
    case 'load': {
      if (!work.loads.some(({ id }) => id === change.load)) {
        return bad({ path: `${path}/load`, found: change.load, expected: 'a load that exists' });
      }
      const loads = work.loads.map((load) =>
        load.id === change.load ? { ...load, arrives: change.arrives } : load,
      );
      return good({ ...work, loads });
    }
  }
}

function named({ chief: _, ...crew }: Crew, { name, chief, attached }: CrewName): Crew {
  return { ...crew, name, attached, ...(chief !== null && { chief }) };
}

function atHours(
  { from, to, ...crew }: Crew,
  { kind: _, crew: __, from: comes = from, to: goes = to, ...others }: CrewHours,
): Crew {
  return {
    ...crew,
    ...others,
    ...(typeof comes === 'number' && { from: comes }),
    ...(typeof goes === 'number' && { to: goes }),
  };
}

function changeTask(
  work: Work,
  change: Extract<Change, { kind: 'task' }>,
  path: string,
): Result<Work, Fault> {
  const before = work.tasks.find(({ id }) => id === change.task);
  if (!before) {
    return bad({ path: `${path}/task`, found: change.task, expected: 'a task that exists' });
  }
  const people = change.people;
  if (people && people.length !== before.needs.length) {
    return bad({
      path: `${path}/people`,
      found: `people for ${people.length} crews`,
      expected: `people for each of ${before.needs.length} crews`,
    });
  }
  const { fixed: held, ...free } = before;
  const fixed = change.fixed === undefined ? held : change.fixed;
  const after: Task = {
    ...free,
    ...(fixed ? { fixed } : {}),
    minutes: change.minutes ?? before.minutes,
    needs: before.needs.map((need, at) => ({ ...need, people: people?.[at] ?? need.people })),
  };
  return good({ ...work, tasks: work.tasks.map((task) => (task === before ? after : task)) });
}
