import type { Task } from '#domain/tasks/task.ts';
import type { Crew, Link, Work, Zone } from '#domain/tasks/work.ts';

/** One task in short: minutes may be one number or quick, likely, slow; people one number or least, usual, most. */
export type Small = Partial<Omit<Task, 'minutes' | 'needs'>> & {
  readonly id: string;
  readonly minutes: number | readonly [number, number, number];
  readonly after?: readonly string[];
  readonly people?: number | readonly [number, number, number];
  /** Any one of these; with `joint` one need each, with `people` from each. */
  readonly crews?: readonly string[];
  readonly joint?: boolean;
};

type Rest = {
  readonly links?: readonly Link[];
  readonly crews?: readonly (Partial<Crew> & { readonly id: string; readonly people: number })[];
  readonly zones?: readonly (Partial<Zone> & { readonly id: string })[];
  readonly loads?: Work['loads'];
};

/** An order of work written down in a few lines. */
export function smallWork(tasks: readonly Small[], rest: Rest = {}): Work {
  const named = new Set(tasks.flatMap(({ zones }) => zones ?? []));
  const zones: (Partial<Zone> & { id: string })[] = [...(rest.zones ?? [])];
  for (const id of named) {
    if (!zones.some((zone) => zone.id === id)) zones.push({ id });
  }
  return {
    tasks: tasks.map(taskOf),
    links: [
      ...tasks.flatMap(({ id, after = [] }) =>
        after.map((from): Link => ({ from, to: id, counts: 'finish', wait: 0 })),
      ),
      ...(rest.links ?? []),
    ],
    crews: (rest.crews ?? []).map((crew) => ({
      name: crew.id,
      skills: [],
      attached: false,
      ...crew,
    })),
    zones: zones.map((zone) => ({ name: zone.id, bank: 'near', ...zone })),
    loads: rest.loads ?? [],
  };
}

function taskOf(
  { minutes, people = 1, crews = [], joint, after: _, ...task }: Small,
  at: number,
): Task {
  const [quick, likely, slow] = typeof minutes === 'number' ? [minutes, minutes, minutes] : minutes;
  const [least, usual, most] = typeof people === 'number' ? [people, people, people] : people;
  const wanted = { least, usual, most };
  return {
    number: at + 1,
    name: task.id,
    phase: '',
    minutes: { quick, likely, slow },
    needs: joint
      ? crews.map((crew) => ({ anyOf: [crew], people: wanted }))
      : [{ anyOf: [...crews], people: wanted }],
    zones: [],
    keepOff: false,
    opens: false,
    cautions: [],
    tools: [],
    loads: [],
    ...task,
  };
}
