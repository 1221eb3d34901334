import type { Bridge } from '../../bridge/bridge.ts';
import type { Fault } from '../../fault.ts';
import type { Kit } from '../../kit/kit.ts';
import type { After, Reference, TaskTemplate } from '../../kit/order.ts';
import type { Task } from '../task.ts';
import type { Link, Work } from '../work.ts';
import { type CarriedLoad, loadsCarrying, loadsOf } from './loads.ts';
import { makeTask } from './makeTask.ts';
import { isMeant } from './pick.ts';
import { type Axis, axesOf, type Repetition, repetitionsOf } from './repetition.ts';

/** A kit's order of work written out for one bridge, with what is wrong with the kit as far as this bridge shows it. */
export type Expansion = {
  readonly work: Work;
  /** By path in the kit file. */
  readonly faults: Fault[];
  /** Paths of the template tasks and references that came to something here. */
  readonly met: ReadonlySet<string>;
};

type Made = {
  readonly template: TaskTemplate;
  readonly path: string;
  readonly axes: readonly Axis[];
  readonly repetition: Repetition;
  readonly task: Task;
};

/** Writes the order of work out, in the kit's order; see `orderOfWork` for the numbered work. */
export function expand(bridge: Bridge, kit: Kit): Expansion {
  const faults: Fault[] = [];
  const met = new Set<string>();
  const loads = loadsOf(kit, bridge);
  const site = { kit, bridge, loads };
  const made: Made[] = [];
  const byTemplate = new Map<string, Made[]>();
  for (const [row, template] of kit.order.entries()) {
    const axes = axesOf(template);
    const path = `/order/${row}`;
    const own = repetitionsOf(template, bridge, loads).map((repetition) => ({
      template,
      path,
      axes,
      repetition,
      task: makeTask(template, repetition, site),
    }));
    byTemplate.set(template.id, own);
    made.push(...own);
    if (own.length > 0) {
      met.add(path);
    }
  }
  checkTasks(made, kit, loads, faults);

  const links = new Map<string, Link>();
  const meant = (one: Made, reference: Reference, path: string): Made[] => {
    const asker = {
      repetition: one.repetition,
      axes: one.axes,
      uses: one.template.uses ?? [],
    };
    const found = (byTemplate.get(reference.task) ?? []).filter(
      (other) =>
        other !== one && isMeant(reference, asker, other.repetition, other.axes, { bridge, loads }),
    );
    if (found.length > 0) {
      met.add(path);
    }
    return found;
  };
  for (const one of made) {
    for (const [at, after] of one.template.after.entries()) {
      for (const other of meant(one, after, `${one.path}/after/${at}`)) {
        addLink(links, other.task.id, one.task.id, after);
      }
    }
    for (const [at, before] of (one.template.before ?? []).entries()) {
      for (const other of meant(one, before, `${one.path}/before/${at}`)) {
        addLink(links, one.task.id, other.task.id, before);
      }
    }
  }
  const tasks = made.map((one) => withRedo(one, meant));
  return {
    work: {
      tasks,
      links: [...links.values()],
      crews: kit.crews,
      zones: kit.zones,
      loads: loads.map(({ id, name, arrives, tonnes }) => ({ id, name, arrives, tonnes })),
    },
    faults,
    met,
  };
}

function withRedo(
  one: Made,
  meant: (one: Made, reference: Reference, path: string) => Made[],
): Task {
  const { task, template, path } = one;
  if (!task.hold || !template.hold) {
    return task;
  }
  const redo = template.hold.redo.flatMap((reference, at) =>
    meant(one, reference, `${path}/hold/redo/${at}`).map((other) => other.task.id),
  );
  return { ...task, hold: { ...task.hold, redo: [...new Set(redo)] } };
}

/** One link for each pair and each way of counting; the longer wait holds. */
function addLink(links: Map<string, Link>, from: string, to: string, after: After): void {
  const counts = after.counts ?? 'finish';
  const wait = after.wait ?? 0;
  const key = `${from} ${to} ${counts}`;
  links.set(key, { from, to, counts, wait: Math.max(wait, links.get(key)?.wait ?? wait) });
}

function checkTasks(
  made: readonly Made[],
  kit: Kit,
  loads: readonly CarriedLoad[],
  faults: Fault[],
): void {
  const ids = new Set<string>();
  const crews = new Set(kit.crews.map(({ id }) => id));
  const zones = new Set(kit.zones.map(({ id }) => id));
  for (const { task, template, path, repetition } of made) {
    const add = (field: string, found: string, expected: string) => {
      faults.push({ path: `${path}/${field}`, found, expected });
    };
    if (ids.has(task.id)) {
      add('makes', task.id, 'an id that no other task of the order gets');
    }
    ids.add(task.id);
    for (const [field, text] of [
      ['makes', task.id],
      ['name', task.name],
    ] as const) {
      if (text.includes('{')) {
        add(field, text, 'placeholders that this task has, as its repeat gives them');
      }
    }
    for (const [at, need] of task.needs.entries()) {
      for (const crew of need.anyOf.filter((id) => !crews.has(id))) {
        add(`needs/${at}/anyOf`, crew, 'a crew of this kit');
      }
    }
    for (const zone of task.zones.filter((id) => !zones.has(id))) {
      add('zones', zone, 'a zone of this kit');
    }
    const people = task.needs.reduce((sum, need) => sum + need.people.usual, 0);
    for (const { id, room } of kit.zones) {
      if (task.zones.includes(id) && room !== undefined && people > room) {
        add('zones', `${people} people in ${id}`, `at most ${room}, the room of that zone`);
      }
    }
    if (template.effect && !task.effect) {
      add('effect', template.effect, 'an effect on what this task repeats along');
    }
    for (const group of template.uses ?? []) {
      if (loadsCarrying(loads, group, repetition.bays).length === 0) {
        add('uses', group, 'a group of parts that some load carries, for every bay');
      }
    }
  }
}
