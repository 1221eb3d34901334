import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Entry, entryKinds } from '#domain/progress/entry.ts';
import { fold } from '#domain/progress/evolve.ts';

// A record as release 0.1 wrote it. It is never written again: whatever changes, this must fold to the same facts.
const entries: Entry[] = JSON.parse(
  readFileSync(new URL('../../corpus/records/golden-1.json', import.meta.url), 'utf8'),
);
/** Kinds of entry that came after that release. */
const since: ReadonlySet<string> = new Set(['doubt-set']);
const state = fold(entries);
const at = (time: string) => `2026-05-04T${time}:00.000Z`;

function task(id: string) {
  return state.tasks[id]!;
}

describe('the golden record of release 0.1', () => {
  it('holds every kind of entry that release wrote, and one that it did not know', () => {
    const kinds = new Set(entries.map(({ kind }) => kind));
    const then = Object.values(entryKinds).filter((kind) => !since.has(kind));
    expect([...kinds].toSorted()).toEqual([...then, 'light-told'].toSorted());
    expect(state).toMatchObject({ number: entries.length, unknown: 1 });
  });

  it('opens Larch Ford with a bridge, one plan, and what the leader set', () => {
    expect(state).toMatchObject({
      name: 'Larch Ford',
      zone: 'Europe/Berlin',
      confidence: 0.8,
      askedFor: at('15:00'),
      planCount: 1,
      planAcceptedAt: at('10:40'),
      bridge: { bays: 1, length: 6 },
      ground: { gap: 3.4 },
    });
  });

  it('has the pegs done after six minutes', () => {
    expect(task('pegs')).toMatchObject({
      status: 'done',
      startedAt: at('11:30'),
      finishedAt: at('11:36'),
      attempt: 1,
    });
  });

  it('has the right panel done as first told, the dispute settled', () => {
    expect(task('panel-right')).toMatchObject({
      status: 'done',
      finishedAt: at('12:01'),
      disputed: false,
    });
  });

  it('has the left panel back for a second attempt, the first kept', () => {
    expect(task('panel-left')).toMatchObject({ status: 'to-come', attempt: 2, tells: [] });
    expect(task('panel-left').earlier).toMatchObject([
      { attempt: 1, startedAt: at('11:52'), finishedAt: at('11:59') },
    ]);
  });

  it('has the lift done in its second attempt and flagged for the left panel', () => {
    expect(task('lift')).toMatchObject({
      status: 'done',
      attempt: 2,
      finishedAt: at('12:25'),
      flagged: true,
      flaggedFor: ['panel-left'],
    });
  });

  it('has the check failed once, passed, lapsed by a relief, passed again, and spent', () => {
    expect(task('check').inspections.map(({ kind }) => kind)).toEqual([
      'failed',
      'passed',
      'lapsed',
      'passed',
    ]);
    expect(task('check')).toMatchObject({
      hold: 'passed',
      status: 'done',
      failures: 1,
      passedBy: 'WO Finch',
      finishedAt: at('12:32'),
    });
  });

  it('has the move done in four minutes and nothing clear any more', () => {
    expect(task('move')).toMatchObject({
      status: 'done',
      startedAt: at('12:35'),
      finishedAt: at('12:39'),
    });
    expect(state.clearances).toEqual({});
  });

  it('has the deck at work since its second start, the first withdrawn', () => {
    expect(task('deck')).toMatchObject({ status: 'at-work', startedAt: at('12:46') });
    expect(state.withdrawn).toHaveLength(1);
  });

  it('has no halt on and six fit in each girder crew', () => {
    expect(state.halt).toBeNull();
    expect(state.crews).toMatchObject({
      left: { fit: 6, hurt: 0, toldAt: at('11:25') },
      right: { fit: 6, hurt: 1, toldAt: null },
      medic: { fit: 1 },
    });
  });

  it('has the truck in, the water rising and the wind read', () => {
    expect(state.loads.truck).toMatchObject({ status: 'in', at: at('11:51') });
    expect(state.water).toMatchObject({ rise: 0.04, level: 1.1, at: at('12:42') });
    expect(state.wind).toMatchObject({ speed: 11, at: at('12:43') });
  });

  it('says in order what is worth saying, the withdrawn breach still among it', () => {
    expect(state.events.map(({ kind, withdrawn = false }) => [kind, withdrawn])).toEqual([
      ['hurt', false],
      ['halt', false],
      ['hold-failed', false],
      // The deck was told started before its move was done, and in a zone that the move closed.
      ['breach', true],
      ['breach', true],
      ['near-miss', false],
      ['short', false],
      ['reopened', false],
    ]);
  });
});
