import { describe, expect, it } from 'vitest';
import {
  comingKeepOff,
  crewThatAsks,
  runningKeepOffs,
} from '#client/screens/chief/comingKeepOff.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { now, state, work } from '../fixtures/larchFord.ts';

const moves = work.tasks.filter(({ effect }) => effect?.kind === 'move').map(({ id }) => id);
const next = moves.find((id) => state.tasks[id]?.status === 'to-come')!;

/** The same state with everything before the next move done. */
function readyToMove(): BuildState {
  const before = work.tasks.slice(
    0,
    work.tasks.findIndex(({ id }) => id === next),
  );
  const tasks = { ...state.tasks };
  for (const { id, hold } of before) {
    const done = { status: 'done' as const, finishedAt: new Date(now).toISOString() };
    tasks[id] = { ...tasks[id]!, ...done, hold: hold ? 'passed' : 'none' };
  }
  return { ...state, tasks };
}

describe('the keep-off task to come', () => {
  it('is not called while much else stands before it', () => {
    // Bays 9 to 11 and the deck of the rear bays still stand before the next move.
    expect(comingKeepOff(state, 'brace', now)).toBeNull();
  });

  it('is called once it is near, with the crew’s own people left out', () => {
    const coming = comingKeepOff(readyToMove(), 'left', now);
    expect(coming?.task.id).toBe(next);
    expect(coming?.own).toBe(4);
  });

  it('leaves out a crew that has nothing more to do in its zones', () => {
    expect(comingKeepOff(readyToMove(), 'brace', now)).toBeNull();
  });

  it('is not called while another one runs on the same ground, which every card says instead', () => {
    const running = moves[moves.indexOf(next) + 1]!;
    const ready = readyToMove();
    const begun = {
      ...ready.tasks[running]!,
      status: 'at-work' as const,
      startedAt: new Date(now).toISOString(),
    };
    const moving = { ...ready, tasks: { ...ready.tasks, [running]: begun } };
    expect(comingKeepOff(moving, 'left', now)).toBeNull();
    expect(runningKeepOffs(moving).map(({ id }) => id)).toEqual([running]);
    expect(runningKeepOffs(ready)).toEqual([]);
  });

  it('is called some minutes before its time by plan', () => {
    // Bay 11 is done, its bracing is at work: the move is minutes away, and still not in order.
    const soon = readyToMove();
    const tasks = {
      ...soon.tasks,
      'brace-11': {
        ...soon.tasks['brace-11']!,
        status: 'at-work' as const,
        startedAt: new Date(now).toISOString(),
      },
      'ready-5': { ...soon.tasks['ready-5']!, status: 'to-come' as const, hold: 'open' as const },
    };
    expect(comingKeepOff({ ...soon, tasks }, 'left', now)?.task.id).toBe(next);
  });
});

describe('the crew that asks for a keep-off start', () => {
  const move = work.tasks.find(({ id }) => id === next)!;
  const given = (left: number, rollers: number): BuildState => ({
    ...state,
    plan: {
      ...state.plan!,
      tasks: state.plan!.tasks.map((task) =>
        task.task === next
          ? {
              ...task,
              crews: [
                { crew: 'left', people: left },
                { crew: 'rollers', people: rollers },
              ],
            }
          : task,
      ),
    },
  });

  it('is the one that gives most people', () => {
    expect(crewThatAsks(given(1, 4), move)).toBe('rollers');
    expect(crewThatAsks(given(4, 1), move)).toBe('left');
  });

  it('is one of them, and always the same, when they give alike', () => {
    expect(crewThatAsks(given(4, 4), move)).toBe('left');
  });
});
