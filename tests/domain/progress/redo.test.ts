import { describe, expect, it } from 'vitest';
import { beforeMove, clock, dale, hill, inspector, log, site } from './site.ts';

describe('finished work found wrong', () => {
  it('comes back as the next attempt, and the attempt before is kept', () => {
    const given = site();
    given.finish('pegs', 0);
    given.send('reopen-task', { task: 'pegs', why: 'line is off', also: [] }, { at: 20 });
    expect(given.task('pegs')).toMatchObject({ status: 'to-come', attempt: 2, startedAt: null });
    expect(given.task('pegs').earlier).toMatchObject([
      { attempt: 1, startedAt: clock(0), finishedAt: clock(5) },
    ]);
    given.finish('pegs', 25);
    expect(given.task('pegs')).toMatchObject({ status: 'done', attempt: 2, finishedAt: clock(30) });
  });

  it('is not done again by a late word about the attempt that was found wrong', () => {
    const given = site();
    given.send('tell-finished', { task: 'pegs', crew: 'left' }, { by: log, saidBy: 'Sgt Hill' });
    given.send('reopen-task', { task: 'pegs', why: 'line is off', also: [] }, { at: 20 });
    const late = given.send(
      'tell-finished',
      { task: 'pegs', crew: 'left' },
      { by: hill, at: 5, received: 25 },
    );
    expect(late.breaches).toBeUndefined();
    expect(given.task('pegs')).toMatchObject({ status: 'to-come', attempt: 2, tells: [] });
    expect(given.task('pegs').earlier[0]?.tells.map(({ entry }) => entry)).toContain(late.number);
    given.send('withdraw', { entry: late.number, why: '' }, { by: hill, at: 26 });
    expect(given.task('pegs').earlier[0]?.tells).toHaveLength(1);
  });

  it('brings back what the leader adds, as far as it is done', () => {
    const given = beforeMove();
    const also = ['panel-right', 'unload'];
    const body = { task: 'panel-left', why: 'pin missing', also };
    const entry = given.send('reopen-task', body, { at: 25 });
    expect(entry.consequence?.redo).toEqual([
      { task: 'panel-left', attempt: 2 },
      { task: 'panel-right', attempt: 2 },
    ]);
  });

  it('makes the passes lapse that rest on it, however far back it lies', () => {
    const given = beforeMove();
    const body = { task: 'pegs', why: 'line is off', also: [] };
    const entry = given.send('reopen-task', body, { at: 25 });
    expect(entry.consequence?.lapsed).toEqual(['check']);
    expect(given.task('check').hold).toBe('lapsed');
  });

  it('leaves a spent pass alone', () => {
    const given = beforeMove();
    given.clear(25);
    given.send('start-keep-off', { task: 'move' }, { at: 26 });
    given.send('tell-finished', { task: 'move', crew: 'left' }, { by: hill, at: 29 });
    const body = { task: 'pegs', why: 'line is off', also: [] };
    const entry = given.send('reopen-task', body, { at: 30 });
    expect(entry.consequence?.lapsed).toBeUndefined();
    expect(given.task('check').hold).toBe('passed');
  });

  it('flags what comes right after it, and what further on is under way', () => {
    const given = beforeMove();
    given.send('tell-started', { task: 'deck', crew: 'right' }, { by: dale, at: 24 });
    const body = { task: 'pegs', why: 'line is off', also: [] };
    const entry = given.send('reopen-task', body, { at: 25 });
    expect(entry.consequence?.flagged).toEqual(['panel-left', 'panel-right', 'deck']);
    expect(given.task('panel-left')).toMatchObject({ status: 'done', flagged: true });
    given.finish('pegs', 30);
    expect(given.task('panel-left').flagged).toBe(false);
    expect(given.task('deck').flagged).toBe(false);
  });

  it('flags no hold: its pass lapses, or is spent', () => {
    const given = beforeMove();
    const entry = given.send('reopen-task', { task: 'lift', why: 'brace loose', also: [] });
    expect(entry.consequence).toEqual({
      redo: [{ task: 'lift', attempt: 2 }],
      lapsed: ['check'],
    });
  });

  it('takes a passed hold back as lapsed', () => {
    const given = beforeMove();
    given.send('reopen-task', { task: 'check', why: 'wrong gauge', also: [] }, { at: 25 });
    expect(given.task('check')).toMatchObject({
      hold: 'lapsed',
      status: 'to-come',
      why: 'Check before the move (5) came back: wrong gauge',
    });
  });

  it('makes a plan made before stale, and is said in reports', () => {
    const given = site();
    given.finish('pegs', 0);
    const entry = given.send('reopen-task', { task: 'pegs', why: 'line is off', also: [] });
    expect(given.state.workNumber).toBe(entry.number);
    expect(given.state.events.at(-1)).toMatchObject({
      kind: 'reopened',
      task: 'pegs',
      sentence: 'Pegs (1) came back: line is off.',
    });
  });

  it('is the leader’s to say', () => {
    const given = site();
    given.finish('pegs', 0);
    const body = { task: 'pegs', why: '', also: [] };
    for (const by of [log, hill, inspector])
      expect(given.refusal('reopen-task', body, { by }).code).toBe('role-cannot');
  });

  it('is refused for work that is not finished, and with tasks that do not exist', () => {
    const given = site();
    const body = { task: 'pegs', why: '', also: [] };
    expect(given.refusal('reopen-task', body).code).toBe('task-not-done');
    given.finish('pegs', 0);
    const unknown = given.refusal('reopen-task', { ...body, also: ['nothing'] });
    expect(unknown).toMatchObject({ code: 'task-unknown', of: ['nothing'] });
  });
});
