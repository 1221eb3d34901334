import { Value } from 'typebox/value';
import { describe, expect, it } from 'vitest';
import { decide } from '#domain/progress/decide.ts';
import { Entry } from '#domain/progress/entry.ts';
import { evolve, fold } from '#domain/progress/evolve.ts';
import { BuildState, emptyBuild } from '#domain/progress/state.ts';
import { knownEntry, presentVersion, type Steps, upcast } from '#domain/progress/upcast.ts';
import { beforeMove, clock, command, dale, hill, leader, site } from './site.ts';

function stranger(number: number, more: Partial<Entry> = {}): Entry {
  return {
    number,
    id: 'f'.repeat(32),
    kind: 'tide-told',
    version: 1,
    by: leader,
    happenedAt: clock(0),
    receivedAt: clock(0),
    body: { height: 3 },
    ...more,
  };
}

describe('folding a record', () => {
  it('gives the state that was reached while it was written', () => {
    const given = beforeMove();
    expect(fold(given.entries)).toEqual(given.state);
  });

  it('gives a state that its schema describes, every part of it, and entries likewise', () => {
    const given = beforeMove();
    given.clear(25);
    given.send('tell-hurt', { crew: 'left', what: 'hand', outOfWork: true }, { by: hill });
    given.send('tell-water', { rise: 0.04, level: 2 });
    given.send('tell-wind', { speed: 4 });
    given.send('tell-load-late', { load: 'truck', minutes: 5, why: 'tyre' });
    given.send('reopen-task', { task: 'pegs', why: 'line', also: [] });
    given.send('tell-started', { task: 'deck', crew: 'right' }, { by: dale });
    given.send('halt', { why: '' });
    given.send('acknowledge-halt', { crew: 'left', people: 6, of: 6 }, { by: hill });
    expect([...Value.Errors(BuildState, given.state)]).toEqual([]);
    expect([...Value.Errors(BuildState, emptyBuild)]).toEqual([]);
    for (const entry of given.entries) expect([...Value.Errors(Entry, entry)]).toEqual([]);
  });

  it('counts an entry once, however often it comes', () => {
    const given = site();
    const entry = given.send('tell-hurt', { crew: 'left', what: 'hand', outOfWork: true });
    expect(evolve(given.state, entry)).toBe(given.state);
    expect(fold([...given.entries, ...given.entries])).toEqual(given.state);
  });

  it('shares what an entry does not touch', () => {
    const given = site();
    const before = given.state;
    given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill });
    const { state } = given;
    const kept = [
      'work',
      'plan',
      'crews',
      'loads',
      'events',
      'clearances',
      'water',
      'wind',
    ] as const;
    for (const part of kept) expect(state[part]).toBe(before[part]);
    for (const id of Object.keys(state.tasks))
      if (id !== 'pegs') expect(state.tasks[id]).toBe(before.tasks[id]);
  });

  it('keeps the tells of the last ten minutes to be withdrawn, and no older ones', () => {
    const given = site();
    given.send('tell-wind', { speed: 1 }, { at: 0 });
    given.send('tell-wind', { speed: 2 }, { at: 5 });
    given.send('tell-wind', { speed: 3 }, { at: 12 });
    expect(given.state.tells.map(({ body }) => body)).toEqual([{ speed: 2 }, { speed: 3 }]);
  });
});

describe('entries that this program does not know', () => {
  it('raise the number and are counted, and change nothing else', () => {
    const given = site();
    const number = given.state.number + 1;
    for (const entry of [
      stranger(number),
      stranger(number, { kind: 'wind-told', version: 2, body: { gusts: [4] } }),
    ])
      expect(evolve(given.state, entry)).toEqual({ ...given.state, number, unknown: 1 });
  });
});

describe('an old entry', () => {
  // As if winds had been kept in knots at first, and with a height from version 3 on.
  const steps: Steps = {
    'wind-told': [
      (entry) => {
        const { knots } = entry.body as { knots: number };
        return { ...entry, body: { speed: Math.round(knots * 0.514444 * 10) / 10 } };
      },
      (entry) => ({ ...entry, body: { ...(entry.body as object), height: 10 } }),
    ],
  };

  it('is brought to its present version step by step', () => {
    const old = stranger(4, { kind: 'wind-told', body: { knots: 10 } });
    expect(upcast(old, steps)).toEqual({ ...old, version: 3, body: { speed: 5.1, height: 10 } });
    const newer = { ...old, version: 2, body: { speed: 5.1 } };
    expect(upcast(newer, steps)).toEqual({ ...old, version: 3, body: { speed: 5.1, height: 10 } });
    expect(presentVersion('wind-told', steps)).toBe(3);
  });

  it('is left alone when it is of the present version or a later one', () => {
    const present = stranger(4, { kind: 'wind-told', version: 3, body: { speed: 5, height: 2 } });
    expect(upcast(present, steps)).toBe(present);
    const later = { ...present, version: 4 };
    expect(upcast(later, steps)).toBe(later);
  });

  it('is known in the version that decide writes now', () => {
    const decided = decide(site().state, command('tell-wind', { speed: 4 }));
    if (!decided.ok) throw new Error(decided.reason.sentence);
    const entry = { ...decided.value[0]!, number: 3 };
    expect(knownEntry(entry)).toEqual(entry);
  });
});
