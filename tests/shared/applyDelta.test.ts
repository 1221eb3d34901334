import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BuildState, emptyBuild, type TaskState } from '#domain/progress/state.ts';
import { applyDelta, diffState } from '#shared/applyDelta.ts';
import type { DeltaFrame } from '#shared/wire.ts';

const task = (attempt: number): TaskState => ({ attempt }) as TaskState;
const event = (entry: number): BuildState['events'][number] =>
  ({ entry, kind: 'short', at: '', sentence: 'x' }) as BuildState['events'][number];

/** A change of one part, made the way `evolve` makes it: what does not change is shared. */
const change = fc.oneof(
  fc.string().map((name) => (state: BuildState) => ({ ...state, name })),
  fc.integer().map((entry) => (state: BuildState) => ({
    ...state,
    events: [...state.events, event(entry)],
  })),
  fc.nat(3).map((drop) => (state: BuildState) => ({ ...state, events: state.events.slice(drop) })),
  fc.nat().map((place) => (state: BuildState) => ({
    ...state,
    events: state.events.filter((_, at) => at !== place % Math.max(1, state.events.length)),
  })),
  fc
    .tuple(fc.constantFrom('a', 'b', 'c', '__proto__x'), fc.nat())
    .map(([id, attempt]) => (state: BuildState) => ({
      ...state,
      tasks: { ...state.tasks, [id]: task(attempt) },
    })),
  fc.constantFrom('a', 'b').map((id) => (state: BuildState) => {
    const { [id]: _gone, ...tasks } = state.tasks;
    return { ...state, tasks };
  }),
  fc.constant((state: BuildState) => ({ ...state, askedFor: null })),
);

/** States as a record leads through them, one number after the other. */
const walk = fc.array(fc.array(change, { maxLength: 3 }), { maxLength: 8 }).map((steps) => {
  const states: BuildState[] = [emptyBuild];
  for (const step of steps) {
    const before = states.at(-1) as BuildState;
    const after = step.reduce<BuildState>((state, make) => make(state), before);
    states.push({ ...after, number: before.number + 1 });
  }
  return states;
});

const deltasOf = (states: readonly BuildState[]): DeltaFrame[] =>
  states.slice(1).map((after, place) => diffState(states[place] as BuildState, after, 'told'));

describe('deltas', () => {
  it('lead from any state to any later one, also over the wire', () => {
    fc.assert(
      fc.property(walk, fc.nat(), (states, from) => {
        const start = from % states.length;
        const wire = JSON.parse(JSON.stringify(deltasOf(states).slice(start))) as DeltaFrame[];
        const led = wire.reduce(applyDelta, states[start] as BuildState);
        expect(led).toEqual(states.at(-1));
      }),
    );
  });

  it('may come twice and overlap', () => {
    fc.assert(
      fc.property(walk, fc.nat(), (states, again) => {
        const deltas = deltasOf(states);
        const repeated = deltas.flatMap((_, at) =>
          deltas.slice(Math.max(0, at - (again % 4)), at + 1),
        );
        expect(repeated.reduce(applyDelta, emptyBuild)).toEqual(states.at(-1));
      }),
    );
  });

  it('carry nothing that did not change, and leave it shared', () => {
    fc.assert(
      fc.property(walk, (states) => {
        for (const [place, delta] of deltasOf(states).entries()) {
          const before = states[place] as BuildState;
          const after = applyDelta(before, delta);
          for (const part of Object.keys(before) as (keyof BuildState)[]) {
            if (states[place + 1]?.[part] !== before[part] || part === 'number') continue;
            expect(Object.keys(delta.changed)).not.toContain(part);
            expect(after[part]).toBe(before[part]);
          }
        }
      }),
    );
  });

  it('carry only the new items of a list that grew', () => {
    const before = { ...emptyBuild, events: [event(1), event(2)] };
    const after = { ...before, number: 1, events: [...before.events.slice(1), event(3)] };
    const delta = diffState(before, after, 'told');
    expect(delta.lists).toEqual({ events: { drop: 1, add: [event(3)] } });
    expect(Object.keys(delta.changed)).toEqual(['number']);
  });
});
