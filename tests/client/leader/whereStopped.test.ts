import { describe, expect, it } from 'vitest';
import { whereStopped } from '#client/screens/leader/launch/whereStopped.ts';
import type { BuildState, TaskStatus } from '#domain/progress/state.ts';
import { emptyBuild } from '#domain/progress/state.ts';
import { bridgeOver, workOver } from '#tests/domain/kit/heronKit.ts';
import { state as halfBuilt } from '../fixtures/larchFord.ts';

const bridge = bridgeOver(31);
const work = workOver(31);
const fresh: BuildState = { ...emptyBuild, bridge, work };
const move = (stage: number) =>
  work.tasks.find(({ effect }) => effect?.kind === 'move' && effect.stage === stage)?.id ?? '';

function told(...statuses: TaskStatus[]): BuildState {
  const [any] = Object.values(halfBuilt.tasks);
  if (!any) throw new Error('the fixture has no task that was told');
  const tasks = Object.fromEntries(
    statuses.map((status, at) => [move(at + 1), { ...any, status }]),
  );
  return { ...fresh, tasks };
}

describe('where a launch stands by what was told', () => {
  it('is nowhere before the first move', () => {
    expect(whereStopped(fresh, bridge)).toBeNull();
  });

  it('is the end of the last move that is done', () => {
    expect(whereStopped(told('done', 'done'), bridge)).toEqual({
      stage: 2,
      into: 6,
      midway: false,
    });
  });

  it.each(['at-work', 'stopped'] as const)(
    'is for somebody to measure where a move is %s',
    (status) => {
      expect(whereStopped(told('done', status), bridge)).toEqual({
        stage: 2,
        into: 0,
        midway: true,
      });
    },
  );
});
