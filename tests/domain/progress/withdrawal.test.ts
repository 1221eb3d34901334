import { describe, expect, it } from 'vitest';
import { beforeMove, commander, dale, hill, inspector, leader, log, site } from './site.ts';

describe('who may withdraw a tell', () => {
  it('its author within ten minutes of its receipt', () => {
    const given = site();
    const entry = given.send(
      'tell-started',
      { task: 'pegs', crew: 'left' },
      { by: hill, at: 0, received: 30 },
    );
    given.send('withdraw', { entry: entry.number, why: '' }, { by: hill, at: 40 });
    expect(given.task('pegs').status).toBe('to-come');
  });

  it('not its author later than that', () => {
    const given = site();
    const entry = given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill, at: 0 });
    const refused = given.refusal(
      'withdraw',
      { entry: entry.number, why: '' },
      { by: hill, at: 10.1 },
    );
    expect(refused.code).toBe('withdrawal-too-late');
  });

  it('not its author later than that, also when others have told things since', () => {
    const given = site();
    const entry = given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill, at: 0 });
    given.send('tell-water', { rise: 0.1, level: null }, { by: dale, at: 30 });
    const body = { entry: entry.number, why: '' };
    expect(given.refusal('withdraw', body, { by: hill, at: 31 }).code).toBe('withdrawal-too-late');
  });

  it('the leader at any time, whoever told it', () => {
    const given = site();
    const entry = given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill, at: 0 });
    given.send('tell-water', { rise: 0.1, level: null }, { by: dale, at: 90 });
    given.send('withdraw', { entry: entry.number, why: '' }, { by: leader, at: 120 });
    expect(given.task('pegs').status).toBe('to-come');
  });

  it('nobody else', () => {
    const given = site();
    const entry = given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill });
    const body = { entry: entry.number, why: '' };
    for (const by of [dale, log])
      expect(given.refusal('withdraw', body, { by }).code).toBe('not-the-author');
    expect(given.refusal('withdraw', body, { by: commander }).code).toBe('role-cannot');
  });
});

describe('what can be withdrawn', () => {
  it('no entry that does not exist', () => {
    const given = site();
    expect(given.refusal('withdraw', { entry: 99, why: '' }).code).toBe('entry-unknown');
  });

  it('no tell twice', () => {
    const given = site();
    const { number } = given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill });
    given.send('withdraw', { entry: number, why: '' }, { by: hill });
    const refused = given.refusal('withdraw', { entry: number, why: '' }, { by: hill });
    expect(refused.code).toBe('already-withdrawn');
  });

  it('no halt, not even by the leader, not even after it was lifted', () => {
    const given = site();
    const { number } = given.send('halt', { why: '' }, { by: dale });
    const withdraw = { entry: number, why: '' };
    expect(given.refusal('withdraw', withdraw).code).toBe('halt-cannot-be-withdrawn');
    for (const [crew, people] of [
      ['left', 7],
      ['right', 7],
      ['medic', 1],
    ] as const)
      given.send('acknowledge-halt', { crew, people, of: people });
    given.send('lift-halt', { name: 'Lt Moor' });
    expect(given.refusal('withdraw', withdraw).code).toBe('halt-cannot-be-withdrawn');
  });

  it('no near miss', () => {
    const given = site();
    const { number } = given.send('tell-near-miss', { what: 'panel slipped' }, { by: dale });
    expect(given.refusal('withdraw', { entry: number, why: '' }).code).toBe('near-miss-stays');
    expect(given.state.events).toMatchObject([{ kind: 'near-miss' }]);
  });

  it('no ask’s entry', () => {
    const given = beforeMove();
    given.clear(25);
    const asked = [given.entries[0]!, given.entries[1]!];
    asked.push(given.entries.find(({ kind }) => kind === 'hold-passed')!);
    asked.push(given.send('start-keep-off', { task: 'move' }, { at: 26 }));
    for (const { number } of asked)
      expect(given.refusal('withdraw', { entry: number, why: '' }).code).toBe('entry-not-a-tell');
  });

  it('no withdrawal', () => {
    const given = site();
    const { number } = given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill });
    const withdrawal = given.send('withdraw', { entry: number, why: '' }, { by: hill });
    const refused = given.refusal('withdraw', { entry: withdrawal.number, why: '' });
    expect(refused.code).toBe('entry-not-a-tell');
  });
});

describe('withdrawing a finish', () => {
  it('flags what was started on its strength, which keeps its state until it is told done again', () => {
    const given = site();
    given.finish('pegs', 0);
    const { number } = given.entries.at(-1)!;
    given.send('tell-started', { task: 'panel-left', crew: 'left' }, { by: hill, at: 6 });
    const entry = given.send('withdraw', { entry: number, why: 'not all' }, { by: hill, at: 7 });
    expect(entry.consequence?.flagged).toEqual(['panel-left']);
    expect(given.task('pegs').status).toBe('at-work');
    expect(given.task('panel-left')).toMatchObject({ status: 'at-work', flagged: true });
    given.send('tell-finished', { task: 'pegs', crew: 'left' }, { by: hill, at: 8 });
    expect(given.task('panel-left')).toMatchObject({ status: 'at-work', flagged: false });
  });

  it('makes a pass that rests on it lapse', () => {
    const given = beforeMove();
    const finish = given.entries.findLast(({ kind }) => kind === 'task-finished')!;
    given.send('withdraw', { entry: finish.number, why: '' }, { by: leader, at: 30 });
    expect(given.task('lift').status).toBe('at-work');
    expect(given.task('check').hold).toBe('lapsed');
  });

  it('changes nothing that another tell still bears out', () => {
    const given = site();
    given.finish('pegs', 0);
    given.send('tell-started', { task: 'panel-left', crew: 'left' }, { by: hill, at: 6 });
    const again = given.send(
      'tell-finished',
      { task: 'pegs', crew: 'left' },
      { by: log, saidBy: 'Sgt Hill', at: 6 },
    );
    const entry = given.send('withdraw', { entry: again.number, why: '' }, { by: log, at: 7 });
    expect(entry.consequence).toBeUndefined();
    expect(given.task('pegs').status).toBe('done');
    expect(given.task('panel-left').flagged).toBe(false);
  });
});

describe('withdrawing what is not work', () => {
  it('gives the strength back that was told before', () => {
    const given = site();
    given.send('tell-strength', { crew: 'left', fit: 6 }, { by: hill, at: 1 });
    const { number } = given.send('tell-strength', { crew: 'left', fit: 3 }, { by: hill, at: 2 });
    const hurt = given.send(
      'tell-hurt',
      { crew: 'left', what: 'hand', outOfWork: true },
      { by: hill, at: 3 },
    );
    expect(given.state.crews.left).toMatchObject({ fit: 2, hurt: 1 });
    given.send('withdraw', { entry: number, why: '' }, { by: hill, at: 4 });
    expect(given.state.crews.left).toMatchObject({ fit: 5, hurt: 1 });
    given.send('withdraw', { entry: hurt.number, why: '' }, { by: hill, at: 4 });
    expect(given.state.crews.left).toMatchObject({ fit: 6, hurt: 0 });
    expect(given.state.events).toEqual([]);
  });

  it('gives load, water, head count, "seen clear" and roll call back', () => {
    const given = beforeMove();
    const before = given.state;
    const tell = [
      () => given.send('tell-load-late', { load: 'truck', minutes: 12, why: 'tyre' }, { at: 21 }),
      () => given.send('tell-load-in', { load: 'truck' }, { at: 21 }),
      () => given.send('tell-water', { rise: 0.04, level: 2.1 }, { at: 21 }),
      () => given.send('tell-short', { part: 'deck planks', count: 4 }, { at: 21 }),
      () => given.send('tell-off', { task: 'move', crew: 'left', off: 3, of: 7 }, { at: 21 }),
      () =>
        given.send(
          'tell-clear',
          { task: 'move', bank: 'far', name: 'Cpl Elm', people: 3 },
          { at: 21 },
        ),
    ].map((each) => each().number);
    for (const entry of tell.toReversed()) given.send('withdraw', { entry, why: '' }, { at: 22 });
    const { loads, water, events, clearances } = given.state;
    expect({ loads, water, events }).toEqual({
      loads: before.loads,
      water: before.water,
      events: before.events,
    });
    expect(clearances).toEqual({ move: { off: {}, clear: {} } });
    given.send('halt', { why: '' });
    const answer = given.send('acknowledge-halt', { crew: 'left', people: 7, of: 7 });
    given.send('withdraw', { entry: answer.number, why: '' });
    expect(given.state.halt?.acknowledged).toEqual({});
  });

  it('keeps a breach in sight, marked as withdrawn', () => {
    const given = site();
    const { number } = given.send('tell-started', { task: 'lift', crew: 'left' }, { by: hill });
    given.send('withdraw', { entry: number, why: 'wrong task' }, { by: hill });
    expect(given.task('lift').status).toBe('to-come');
    expect(given.state.events.map(({ kind, withdrawn }) => [kind, withdrawn])).toEqual([
      ['breach', true],
      ['breach', true],
    ]);
  });
});

describe('the inspector', () => {
  it('may withdraw the own finding, and nothing of the crews', () => {
    const given = beforeMove();
    const failed = given.send(
      'fail-hold',
      { task: 'check', name: 'WO Finch', values: {}, why: 'misread' },
      { by: inspector, at: 21 },
    );
    given.send('withdraw', { entry: failed.number, why: '' }, { by: inspector, at: 22 });
    expect(given.task('check').hold).toBe('passed');
    expect(given.task('lift').status).toBe('done');
    const tick = given.send(
      'tell-started',
      { task: 'unload', crew: 'right' },
      { by: dale, at: 23 },
    );
    const body = { entry: tick.number, why: '' };
    const refused = given.refusal('withdraw', body, { by: inspector, at: 23 });
    expect(refused.code).toBe('not-the-author');
  });
});
