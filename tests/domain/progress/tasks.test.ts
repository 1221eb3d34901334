import { describe, expect, it } from 'vitest';
import { clock, dale, hill, leader, log, opening, Site, site, siteWork } from './site.ts';

describe('a task of one crew', () => {
  it('is at work once told started and done once told finished, with the times it happened', () => {
    const given = site();
    given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill, at: 3 });
    expect(given.task('pegs')).toMatchObject({ status: 'at-work', startedAt: clock(3) });
    given.send('tell-finished', { task: 'pegs', crew: 'left' }, { by: hill, at: 9 });
    expect(given.task('pegs')).toMatchObject({
      status: 'done',
      startedAt: clock(3),
      finishedAt: clock(9),
      part: 1,
    });
  });

  it('may be told finished without ever having been told started: its start stays unknown', () => {
    const given = site();
    given.send('tell-finished', { task: 'pegs', crew: 'left' }, { by: hill, at: 9 });
    expect(given.task('pegs')).toMatchObject({ status: 'done', startedAt: null });
  });

  it('is stopped with its reason, and goes on once told resumed', () => {
    const given = site();
    given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill });
    given.send('tell-stopped', { task: 'pegs', crew: 'left', why: 'peg broke' }, { by: hill });
    expect(given.task('pegs')).toMatchObject({ status: 'stopped', why: 'peg broke' });
    given.send('tell-resumed', { task: 'pegs', crew: 'left' }, { by: hill });
    expect(given.task('pegs')).toMatchObject({ status: 'at-work', why: null });
  });

  it('keeps the part that was told', () => {
    const given = site();
    given.send('tell-part', { task: 'pegs', crew: 'left', part: 0.4 }, { by: hill });
    expect(given.task('pegs')).toMatchObject({ status: 'at-work', part: 0.4 });
  });

  it('stays as it was when it is told done twice', () => {
    const given = site();
    given.send('tell-finished', { task: 'pegs', crew: 'left' }, { by: hill, at: 9 });
    given.send('tell-finished', { task: 'pegs', crew: 'left' }, { by: hill, at: 15 });
    expect(given.task('pegs')).toMatchObject({ status: 'done', finishedAt: clock(9) });
    expect(given.entries.at(-1)!.kind).toBe('task-finished');
  });

  it('may be taken by another crew than planned', () => {
    const given = site();
    given.send('tell-finished', { task: 'pegs', crew: 'right' }, { by: dale });
    expect(given.task('pegs').status).toBe('done');
    expect(given.task('pegs').shares.map(({ crew }) => crew)).toEqual(['right']);
  });

  it('counts what happened, not what arrived first: a late "started" does not undo a "stopped"', () => {
    const given = site();
    const stopped = { task: 'pegs', crew: 'left', why: 'no pegs' };
    given.send('tell-stopped', stopped, { by: log, at: 10, saidBy: 'Sgt Hill' });
    given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill, at: 2, received: 14 });
    expect(given.task('pegs')).toMatchObject({ status: 'stopped', startedAt: clock(2) });
  });

  it('stays done when its start is entered late', () => {
    const given = site();
    given.send('tell-finished', { task: 'pegs', crew: 'left' }, { by: hill, at: 9 });
    given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: log, at: 11 });
    expect(given.task('pegs')).toMatchObject({ status: 'done', finishedAt: clock(9) });
  });

  it('is at work again when it is told to go on after it was told done', () => {
    const given = site();
    given.send('tell-finished', { task: 'pegs', crew: 'left' }, { by: hill, at: 9 });
    given.send('tell-resumed', { task: 'pegs', crew: 'left' }, { by: hill, at: 11 });
    expect(given.task('pegs')).toMatchObject({ status: 'at-work', disputed: false, part: 0 });
    given.send('tell-finished', { task: 'pegs', crew: 'left' }, { by: hill, at: 15 });
    expect(given.task('pegs')).toMatchObject({ status: 'done', finishedAt: clock(15) });
  });
});

describe('a joint task', () => {
  it('is done only when each planned crew told so', () => {
    const given = site();
    given.send('tell-finished', { task: 'lift', crew: 'left' }, { by: hill, at: 30 });
    expect(given.task('lift').status).toBe('at-work');
    given.send('tell-finished', { task: 'lift', crew: 'right' }, { by: dale, at: 34 });
    expect(given.task('lift')).toMatchObject({ status: 'done', finishedAt: clock(34) });
  });

  it('is held up when one of its crews stops', () => {
    const given = site();
    given.send('tell-started', { task: 'lift', crew: 'left' }, { by: hill });
    given.send('tell-started', { task: 'lift', crew: 'right' }, { by: dale });
    given.send('tell-stopped', { task: 'lift', crew: 'right', why: 'bar bent' }, { by: dale });
    expect(given.task('lift')).toMatchObject({ status: 'stopped', why: 'bar bent' });
    expect(given.task('lift').shares.map(({ status }) => status)).toEqual(['at-work', 'stopped']);
  });

  it('waits for the crews its needs name before there is a plan', () => {
    const given = new Site();
    given.take(opening(siteWork));
    given.send('tell-finished', { task: 'lift', crew: 'left' }, { by: hill });
    expect(given.task('lift').status).toBe('at-work');
    given.send('tell-finished', { task: 'lift', crew: 'right' }, { by: dale });
    expect(given.task('lift').status).toBe('done');
  });
});

describe('two tells that contradict each other', () => {
  function disputed() {
    const given = site();
    given.send('tell-finished', { task: 'pegs', crew: 'left' }, { by: hill, at: 9 });
    given.send(
      'tell-stopped',
      { task: 'pegs', crew: 'left', why: 'two pegs missing' },
      { by: log, saidBy: 'Pte Wren', at: 10 },
    );
    return given;
  }

  it('leave the worse in force until the leader settles it', () => {
    const given = disputed();
    expect(given.task('pegs')).toMatchObject({ status: 'stopped', disputed: true });
    expect(given.task('pegs').tells).toHaveLength(2);
  });

  it('are the same dispute whichever arrives first', () => {
    const given = site();
    const stopped = { task: 'pegs', crew: 'left', why: 'two pegs missing' };
    given.send('tell-stopped', stopped, { by: log, saidBy: 'Pte Wren', at: 9 });
    given.send('tell-finished', { task: 'pegs', crew: 'left' }, { by: hill, at: 10 });
    expect(given.task('pegs')).toMatchObject({ status: 'stopped', disputed: true });
  });

  it('are settled as done, as of when it was told done', () => {
    const given = disputed();
    given.send('settle-task', { task: 'pegs', status: 'done' }, { at: 20 });
    expect(given.task('pegs')).toMatchObject({
      status: 'done',
      disputed: false,
      finishedAt: clock(9),
    });
  });

  it('are settled as stopped, and the work can go on from there', () => {
    const given = disputed();
    given.send('settle-task', { task: 'pegs', status: 'stopped' }, { at: 20 });
    expect(given.task('pegs')).toMatchObject({ status: 'stopped', disputed: false });
    given.send('tell-resumed', { task: 'pegs', crew: 'left' }, { by: hill, at: 21 });
    given.send('tell-finished', { task: 'pegs', crew: 'left' }, { by: hill, at: 25 });
    expect(given.task('pegs')).toMatchObject({
      status: 'done',
      disputed: false,
      finishedAt: clock(25),
    });
  });

  it('are settled as of the last time it was told done, not of an earlier one that went on', () => {
    const given = site();
    const pegs = { task: 'pegs', crew: 'left' };
    given.send('tell-finished', pegs, { by: hill, at: 9 });
    given.send('tell-resumed', pegs, { by: hill, at: 11 });
    given.send('tell-stopped', { ...pegs, why: 'rain' }, { by: hill, at: 12 });
    given.send('tell-finished', pegs, { by: log, saidBy: 'Pte Wren', at: 20 });
    expect(given.task('pegs')).toMatchObject({ status: 'stopped', disputed: true });
    given.send('settle-task', { task: 'pegs', status: 'done' }, { at: 25 });
    expect(given.task('pegs')).toMatchObject({ status: 'done', finishedAt: clock(20) });
  });

  it('are a dispute, too, when one says done and another that it goes on', () => {
    const given = site();
    given.send('tell-finished', { task: 'pegs', crew: 'left' }, { by: hill, at: 9 });
    given.send(
      'tell-resumed',
      { task: 'pegs', crew: 'left' },
      { by: log, saidBy: 'Pte Wren', at: 11 },
    );
    expect(given.task('pegs')).toMatchObject({ status: 'at-work', disputed: true });
  });

  it('are no dispute when one and the same person says so, by phone or by radio', () => {
    const given = site();
    given.send('tell-stopped', { task: 'pegs', crew: 'left', why: 'rain' }, { by: hill, at: 5 });
    given.send(
      'tell-finished',
      { task: 'pegs', crew: 'left' },
      { by: log, saidBy: 'Sgt Hill', at: 9 },
    );
    expect(given.task('pegs')).toMatchObject({ status: 'done', disputed: false });
  });

  it('are no dispute when the leader speaks last', () => {
    const given = disputed();
    given.send('tell-finished', { task: 'pegs', crew: 'left' }, { by: leader, at: 12 });
    expect(given.task('pegs')).toMatchObject({ status: 'done', disputed: false });
  });

  it('are a dispute between two crews too, where one crew is enough for the task', () => {
    const given = site();
    given.send('tell-finished', { task: 'pegs', crew: 'left' }, { by: hill, at: 9 });
    given.send(
      'tell-stopped',
      { task: 'pegs', crew: 'right', why: 'crooked' },
      { by: dale, at: 9 },
    );
    expect(given.task('pegs')).toMatchObject({ status: 'stopped', disputed: true });
    given.send('settle-task', { task: 'pegs', status: 'done' });
    expect(given.task('pegs')).toMatchObject({ status: 'done', disputed: false });
  });

  it('cannot be settled where there are none', () => {
    const refused = site().refusal('settle-task', { task: 'pegs', status: 'done' });
    expect(refused.code).toBe('nothing-to-settle');
  });
});

describe('times of a tell', () => {
  it('are never after its receipt', () => {
    const given = site();
    const entry = given.send(
      'tell-started',
      { task: 'pegs', crew: 'left' },
      { by: hill, at: 30, received: 12 },
    );
    expect(entry.happenedAt).toBe(clock(12));
    expect(given.task('pegs').startedAt).toBe(clock(12));
  });
});
