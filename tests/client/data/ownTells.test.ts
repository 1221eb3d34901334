import { describe, expect, it } from 'vitest';
import { withOwnTells } from '#client/data/ownTells.ts';
import type { Sending } from '#client/data/sender.ts';
import type { Author } from '#domain/progress/command.ts';
import { now, state } from '../fixtures/larchFord.ts';

const you: Author = { role: 'chief', name: 'Cpl R', crew: 'right' };
const atWork = state.work.tasks.find(
  ({ id, needs }) =>
    state.tasks[id]?.status === 'at-work' && needs.length === 1 && needs[0]?.anyOf[0] === 'right',
)!;

function sending(change: Partial<Sending>): Sending {
  return {
    id: '0'.repeat(32),
    kind: 'tell-finished',
    body: { task: atWork.id, crew: 'right' },
    happenedAt: new Date(now).toISOString(),
    state: 'waiting',
    tries: 2,
    receipt: null,
    ...change,
  };
}

const fold = (...sendings: Sending[]) => withOwnTells(state, sendings, you, 0, now);
const statusAfter = (...sendings: Sending[]) => fold(...sendings).tasks[atWork.id]?.status;

describe('a tell of this device', () => {
  it('shows at once though it is not sent yet', () => {
    expect(statusAfter()).toBe('at-work');
    expect(statusAfter(sending({}))).toBe('done');
  });

  it('shows no more once it was taken back', () => {
    expect(statusAfter(sending({ takenBack: true }))).toBe('at-work');
  });

  it('still shows between its receipt and the feed', () => {
    const receipt = { id: '0'.repeat(32), outcome: 'recorded', entry: 241, breaches: [] } as const;
    expect(statusAfter(sending({ state: 'recorded', receipt }))).toBe('done');
  });

  it('is the server’s once the feed has it', () => {
    const receipt = { id: '0'.repeat(32), outcome: 'recorded', entry: 240, breaches: [] } as const;
    expect(statusAfter(sending({ state: 'recorded', receipt }))).toBe('at-work');
  });

  it('disappears when it was refused', () => {
    const receipt = {
      id: '0'.repeat(32),
      outcome: 'refused',
      code: 'not-your-crew',
      sentence: 'No.',
    } as const;
    expect(statusAfter(sending({ state: 'refused', receipt }))).toBe('at-work');
  });

  it('changes nothing that the server holds', () => {
    const before = JSON.stringify(state);
    fold(sending({}));
    expect(JSON.stringify(state)).toBe(before);
  });
});

describe('an ask of this device', () => {
  it('never shows as granted before the server has granted it', () => {
    const ask = sending({ kind: 'start-keep-off', body: { task: 'move-5' } });
    expect(fold(ask)).toBe(state);
  });
});
