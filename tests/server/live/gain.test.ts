import { expect, it } from 'vitest';
import type { Plan, PlannedTask } from '#domain/schedule/plan.ts';
import { gainSentence } from '#server/live/gain.ts';

const task = (id: string, start: number, people = 4): PlannedTask => ({
  task: id,
  crews: [{ crew: 'left', people }],
  start,
  finish: start + 10,
  release: 0,
  stretch: 1,
  reason: { kind: 'start' },
});

const plan = (minutesToOpen: number, tasks: PlannedTask[]): Plan => ({
  format: 'spanwright-plan',
  version: 1,
  tasks,
  handOvers: [],
  opening: 'open',
  minutesToOpen,
  lowerBound: 0,
  shape: 'pert',
});

const inForce = plan(300, [task('pegs', 0), task('panel', 10), task('move', 20)]);

it('says how much earlier or later it opens, and how many tasks change', () => {
  const other = [task('pegs', 0), task('panel', 12), task('move', 20, 5)];
  expect(gainSentence(plan(286, other), inForce)).toBe('opens 14 min earlier; changes 2 tasks');
  expect(gainSentence(plan(301, other), inForce)).toBe('opens 1 min later; changes 2 tasks');
});

it('counts a task that comes or goes as one', () => {
  const tasks = [...inForce.tasks.slice(1), task('brace', 0)];
  expect(gainSentence(plan(300, tasks), inForce)).toBe('opens at the same time; changes 2 tasks');
});

it('speaks of one task in the singular, and of none', () => {
  expect(gainSentence(plan(300, [...inForce.tasks, task('brace', 0)]), inForce)).toMatch(/1 task$/);
  expect(gainSentence(inForce, inForce)).toMatch(/0 tasks$/);
});

it('has nothing to compare the first plan with', () => {
  expect(gainSentence(plan(286.4, []), null)).toBe('first plan: opens 286 min after the start');
});
