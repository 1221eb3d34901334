import { describe, expect, it } from 'vitest';
import { movesOf } from '#client/screens/leader/plan/moves.ts';
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

  it('is everything where there was no plan', () => {
    expect(movesOf(null, before, nothingBegun)).toHaveLength(4);
  });
});
