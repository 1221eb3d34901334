import { describe, expect, it } from 'vitest';
import { Pool } from '#domain/schedule/pool.ts';

const wish = (task: number, amount: number) => ({ task, amount, keepOff: false, bank: null });

/** Tasks whose end a new task waits for, by what it takes from the pool. */
function waitsFor(pool: Pool, task: number, amount: number, start: number): number[] {
  const taken = pool.take(wish(task, amount), start, start + 10, new Set());
  return [...new Set(taken.flatMap(({ last }) => last))].sort();
}

describe('People of a crew that has more at work than it has people', () => {
  // Six people; tasks 1 and 2 hold three each until 80 and 70, task 3 another one of them until 60.
  const doubled = () => {
    const pool = new Pool(6);
    pool.overlay(wish(1, 3), 80);
    pool.overlay(wish(2, 3), 70);
    pool.overlay(wish(3, 1), 60);
    return pool;
  };

  it('start nothing new before what is over the strength has ended, whoever hands over', () => {
    expect(waitsFor(doubled(), 9, 3, 70)).toEqual([2, 3]);
    const late = doubled();
    expect(late.freeAt(wish(9, 1))).toBe(70);
    // Even people from task 1 alone wait for task 3: while both are at work four are held where three are counted.
    expect(waitsFor(doubled(), 9, 1, 80)).toContain(3);
  });

  it('ask the next one for it only where it does not follow from the one before', () => {
    const pool = doubled();
    pool.take(wish(9, 3), 70, 75, new Set());
    expect(waitsFor(pool, 10, 3, 75)).toEqual([9]);
  });
});

it('People of a crew that is not over its strength wait for nobody but who hands over', () => {
  const pool = new Pool(6);
  pool.overlay(wish(1, 3), 80);
  pool.overlay(wish(2, 2), 70);
  expect(pool.freeAt(wish(9, 1))).toBe(0);
  expect(waitsFor(pool, 9, 1, 0)).toEqual([]);
  expect(waitsFor(pool, 10, 3, 70)).toEqual([2, 9]);
});
