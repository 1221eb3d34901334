import type { Bridge } from '#domain/bridge/bridge.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import { freshTask } from '#domain/progress/standing.ts';
import { type BuildState, emptyBuild } from '#domain/progress/state.ts';
import type { Task } from '#domain/tasks/task.ts';
import type { Work } from '#domain/tasks/work.ts';

/** A state of that work of which nothing has been told, every crew at its planned strength. */
export function stateOf(work: Work, more: Partial<BuildState> = {}): BuildState {
  return {
    ...emptyBuild,
    name: 'Alder Weir',
    unit: '3 Platoon',
    start: '2026-11-25T11:30:00.000Z',
    askedFor: '2026-11-25T17:00:00.000Z',
    zone: 'UTC',
    work,
    tasks: Object.fromEntries(work.tasks.map((task) => [task.id, freshTask(task)])),
    crews: Object.fromEntries(
      work.crews.map(({ id, people }) => [
        id,
        {
          fit: people,
          hurt: 0,
          outOfWork: 0,
          toldAt: null,
          planned: { people, entry: 1 },
          tells: [],
        },
      ]),
    ),
    ...more,
  };
}

/** The state with one task done between two instants. */
export function withDone(
  state: BuildState,
  task: string,
  startedAt: string,
  finishedAt: string,
): BuildState {
  const done = { ...state.tasks[task]!, status: 'done' as const, part: 1, startedAt, finishedAt };
  return { ...state, tasks: { ...state.tasks, [task]: done } };
}

/** A task of that many people and certain minutes. */
export function plainTask(id: string, number: number, people: number, minutes: number): Task {
  return {
    id,
    number,
    name: `Task ${id}`,
    phase: 'Bays',
    needs: [{ anyOf: [], people: { least: people, usual: people, most: people } }],
    minutes: { quick: minutes, likely: minutes, slow: minutes },
    zones: [],
    keepOff: false,
    opens: false,
    cautions: [],
    tools: [],
    loads: [],
  };
}

export const ground: Ground = {
  format: 'spanwright-ground',
  version: 1,
  name: 'Alder Weir',
  zone: 'UTC',
  place: { latitude: 51.5, longitude: -0.1333 },
  gap: 15,
  near: { kind: 'made', height: 4, setback: 0 },
  far: { kind: 'made', height: 4, setback: 0 },
  roomBehind: 30,
  water: { depth: 2, rise: null },
  loadClass: 30,
};

/** Three bays and no nose: enough to be counted. */
export const bridge: Bridge = {
  kit: { name: 'plain', title: 'Plain girder bridge', hash: '', notForUse: true },
  manner: 'launched',
  bays: 3,
  bayLength: 6,
  length: 18,
  nose: 0,
  noseLength: 0,
  bearing: { near: 1.5, far: 1.5 },
  loadClass: 30,
  gap: 15,
  landsAt: 15,
  roomNeeded: 20,
  masses: { bay: 1000, deck: 500, nose: 0 },
  stages: [],
  parts: [],
  unknowns: [],
};
