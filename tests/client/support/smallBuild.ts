import { type BuildState, emptyBuild, type TaskState } from '#domain/progress/state.ts';
import type { Task } from '#domain/tasks/task.ts';

/** 13:33 at a site one hour ahead of UTC. */
export const smallNow = Date.parse('2026-11-25T12:33:00Z');

function task(
  number: number,
  id: string,
  name: string,
  crew: string,
  more: Partial<Task> = {},
): Task {
  return {
    id,
    number,
    name,
    phase: 'Bays',
    needs: [{ anyOf: [crew], people: { least: 4, usual: 6, most: 8 } }],
    minutes: { quick: 3, likely: 4, slow: 7 },
    zones: [],
    keepOff: false,
    opens: false,
    cautions: [],
    tools: [],
    loads: [],
    ...more,
  };
}

const standing: TaskState = {
  status: 'to-come',
  attempt: 1,
  startedAt: null,
  finishedAt: null,
  why: null,
  part: 0,
  shares: [],
  disputed: false,
  flagged: false,
  flaggedFor: [],
  hold: 'none',
  passedBy: null,
  ownWork: false,
  values: {},
  failures: 0,
  tells: [],
  inspections: [],
  earlier: [],
};

const crew = (id: string, name: string, people: number, chief?: string) => ({
  id,
  name,
  people,
  skills: [],
  attached: false,
  ...(chief && { chief }),
});

const tasks = [
  task(57, 'bay-9-left', 'Bay 9, left side', 'left'),
  task(58, 'bay-10-left', 'Bay 10, left side', 'left'),
  task(60, 'bay-9-right', 'Bay 9, right side', 'right'),
  task(70, 'ready-5', 'Ready for move 5', 'rollers', {
    hold: { measures: [], lapsesOn: [], redo: [] },
  }),
  task(71, 'move-5', 'Move 5', 'rollers', { keepOff: true }),
];

/** Three crews at a bridge: bay 9 at work on the left, a hold and a keep-off move to come. */
export const smallBuild: BuildState = {
  ...emptyBuild,
  number: 230,
  name: 'Small Ford',
  start: '2026-11-25T10:30:00Z',
  zone: 'Europe/Berlin',
  work: {
    tasks,
    links: [
      { from: 'bay-9-left', to: 'bay-10-left', counts: 'finish', wait: 0 },
      { from: 'bay-9-left', to: 'ready-5', counts: 'finish', wait: 0 },
      { from: 'ready-5', to: 'move-5', counts: 'finish', wait: 0 },
    ],
    crews: [
      crew('left', 'Left girder', 7, 'Cpl Okoro'),
      crew('right', 'Right girder', 7),
      crew('rollers', 'Rollers and jacks', 4),
    ],
    zones: [],
    loads: [
      { id: 'truck-4', name: 'Truck 4: bays 7 to 11', arrives: 60 },
      { id: 'truck-5', name: 'Truck 5: deck', arrives: 110 },
    ],
  },
  tasks: Object.fromEntries(
    tasks.map(({ id, hold }) => [
      id,
      { ...standing, hold: hold ? ('open' as const) : ('none' as const) },
    ]),
  ),
  crews: Object.fromEntries(
    [
      ['left', 7],
      ['right', 6],
      ['rollers', 4],
    ].map(([id, fit]) => [
      id,
      {
        fit: fit as number,
        hurt: 0,
        outOfWork: 0,
        toldAt: null,
        planned: { people: fit as number, entry: 1 },
        tells: [],
      },
    ]),
  ),
  loads: Object.fromEntries(
    ['truck-4', 'truck-5'].map((id) => [
      id,
      {
        status: 'expected' as const,
        at: '2026-11-25T12:30:00Z',
        why: null,
        planned: { at: '2026-11-25T12:30:00Z', entry: 1 },
        tells: [],
      },
    ]),
  ),
};

/** The small build with one task standing otherwise. */
export function standingSo(id: string, more: Partial<TaskState>, state = smallBuild): BuildState {
  return { ...state, tasks: { ...state.tasks, [id]: { ...state.tasks[id]!, ...more } } };
}
