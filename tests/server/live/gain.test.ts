import { expect, it } from 'vitest';
import type { Forecast } from '#domain/forecast/forecast.ts';
import type { Plan, PlannedTask } from '#domain/schedule/plan.ts';
import { gainSentence } from '#server/live/gain.ts';

const task = (id: string, people = 4): PlannedTask => ({
  task: id,
  crews: [{ crew: 'left', people }],
  start: 0,
  finish: 10,
  release: 0,
  stretch: 1,
  reason: { kind: 'start' },
});

/** A plan that would have opened at 300 min, seen from now to open at an even chance by `p50`. */
const seen = (p50: number, tasks: PlannedTask[], minutesToOpen = 300) => ({
  plan: {
    format: 'spanwright-plan',
    version: 1,
    tasks,
    handOvers: [],
    opening: 'open',
    minutesToOpen,
    lowerBound: 0,
    shape: 'pert',
  } satisfies Plan,
  forecast: { p50 } as Forecast,
});

const inForce = seen(320, [task('pegs'), task('panel'), task('move')]);

it('compares both plans as they are seen from now, not the times the old one once had', () => {
  const tasks = [task('pegs'), task('panel'), task('move', 5)];
  expect(gainSentence(seen(306, tasks), inForce)).toBe(
    'opens 14 min earlier; other people on 1 task',
  );
  expect(gainSentence(seen(321, tasks), inForce)).toBe('opens 1 min later; other people on 1 task');
});

it('counts a task that comes or goes', () => {
  const tasks = [task('panel'), task('move'), task('brace')];
  expect(gainSentence(seen(320, tasks), inForce)).toBe(
    'opens at the same time; other people on 2 tasks',
  );
});

it('says when nobody changes places', () => {
  expect(gainSentence(seen(318, inForce.plan.tasks), inForce)).toBe(
    'opens 2 min earlier; the same people on every task',
  );
});

it('has nothing to compare the first plan with', () => {
  expect(gainSentence(seen(290, [], 286.4), null)).toBe(
    'first plan: opens 286 min after the start',
  );
});
