import { describe, expect, it } from 'vitest';
import { crewChanges, movesOf } from '#client/screens/leader/plan/moves.ts';
import type { Plan, PlannedTask } from '#domain/schedule/plan.ts';

const task = (id: string, start: number, people = 6): PlannedTask => ({
  task: id,
  crews: [{ crew: 'left', people }],
  start,
  finish: start + 4,
  release: 0,
  stretch: 1,
  reason: { kind: 'start' },
});

const plan = (...tasks: PlannedTask[]): Plan => ({
  format: 'spanwright-plan',
  version: 1,
  tasks,
  handOvers: [],
  opening: 'c',
  minutesToOpen: 60,
  lowerBound: 50,
  shape: 'pert',
});

const nothingBegun = (): boolean => false;

describe('what moves between two plans', () => {
  const before = plan(task('a', 0), task('b', 10), task('c', 20), task('d', 30));

  it('is what starts a minute or more apart, the largest move first', () => {
    const after = plan(task('a', 0.5), task('b', 12), task('c', 10), task('d', 30));
    expect(movesOf(before, after, nothingBegun).map(({ task: id, shift }) => [id, shift])).toEqual([
      ['c', -10],
      ['b', 2],
    ]);
  });

  it('is also what goes to other people, and what is new', () => {
    const after = plan(task('a', 0, 5), task('b', 10), task('c', 20), task('d', 30), task('e', 40));
    expect(movesOf(before, after, nothingBegun).map(({ task: id }) => id)).toEqual(['a', 'e']);
  });

  it('is nothing that has begun', () => {
    const after = plan(task('a', 9), task('b', 10), task('c', 20), task('d', 30));
    expect(movesOf(before, after, (id) => id === 'a')).toEqual([]);
  });

  it('names only the crews whose people change', () => {
    const joint = (boat: number, bracing: number): PlannedTask => ({
      ...task('a', 0),
      crews: [
        { crew: 'boat', people: boat },
        { crew: 'bracing', people: bracing },
      ],
    });
    expect(crewChanges(joint(2, 4), joint(2, 3))).toEqual([{ crew: 'bracing', was: 4, is: 3 }]);
    expect(crewChanges(task('a', 0), joint(2, 3))).toEqual([
      { crew: 'boat', was: 0, is: 2 },
      { crew: 'bracing', was: 0, is: 3 },
      { crew: 'left', was: 6, is: 0 },
    ]);
  });

  it('is everything where there was no plan', () => {
    expect(movesOf(null, before, nothingBegun)).toHaveLength(4);
  });
});
