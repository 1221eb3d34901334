import { describe, expect, it } from 'vitest';
import { beforeMove, clock, dale, hill, site, siteWork } from './site.ts';

describe('work told out of order', () => {
  it('is recorded and marked, naming what is not done', () => {
    const given = site();
    const entry = given.send('tell-started', { task: 'panel-left', crew: 'left' }, { by: hill });
    expect(entry.breaches).toEqual([
      {
        rule: 'order',
        sentence:
          'Panel left (2) was told started too early. Finish Pegs (1) first: it is not started.',
        of: ['pegs'],
      },
    ]);
    expect(given.task('panel-left').status).toBe('at-work');
    expect(given.state.events).toMatchObject([
      { entry: entry.number, kind: 'breach', task: 'panel-left', crew: 'left' },
    ]);
  });

  it('is marked as well when only its end is told', () => {
    const given = site();
    const entry = given.send('tell-finished', { task: 'panel-left', crew: 'left' }, { by: hill });
    expect(entry.breaches?.map(({ rule }) => rule)).toEqual(['order']);
    expect(given.task('panel-left').status).toBe('done');
  });

  it('is not marked again when it is told finished after it was told started', () => {
    const given = site();
    given.send('tell-started', { task: 'panel-left', crew: 'left' }, { by: hill });
    const entry = given.send('tell-finished', { task: 'panel-left', crew: 'left' }, { by: hill });
    expect(entry.breaches).toBeUndefined();
  });

  it('is marked as breaking a hold when the hold before it is not passed', () => {
    const given = site();
    for (const id of ['pegs', 'panel-left', 'panel-right', 'lift']) given.finish(id);
    const entry = given.send('tell-started', { task: 'move', crew: 'left' }, { by: hill });
    expect(entry.breaches?.map(({ rule }) => rule)).toEqual(['keep-off', 'hold']);
  });

  it('is in order while it keeps a wait, and marked when it does not', () => {
    const links = siteWork.links.map((link) =>
      link.to === 'panel-left' ? { ...link, wait: 20 } : link,
    );
    const given = site({ ...siteWork, links });
    given.finish('pegs', 0);
    const early = given.send(
      'tell-started',
      { task: 'panel-left', crew: 'left' },
      { by: hill, at: 17 },
    );
    expect(early.breaches?.[0]?.sentence).toContain('Wait 8 minutes more after Pegs (1).');
    given.send('withdraw', { entry: early.number, why: '' }, { by: hill, at: 18 });
    const late = given.send(
      'tell-started',
      { task: 'panel-left', crew: 'left' },
      { by: hill, at: 25 },
    );
    expect(late.breaches).toBeUndefined();
  });

  it('may begin while the one before is at work, where the link lets it overlap', () => {
    const links = siteWork.links.map((link) =>
      link.to === 'panel-left' ? { ...link, wait: -2 } : link,
    );
    const given = site({ ...siteWork, links });
    given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill });
    const entry = given.send('tell-started', { task: 'panel-left', crew: 'left' }, { by: hill });
    expect(entry.breaches).toBeUndefined();
  });

  it('may begin once the one before has begun, where the link counts from its start', () => {
    const links = siteWork.links.map((link) =>
      link.to === 'panel-left' ? { ...link, counts: 'start' as const } : link,
    );
    const given = site({ ...siteWork, links });
    const early = given.send('tell-started', { task: 'panel-left', crew: 'left' }, { by: hill });
    expect(early.breaches?.map(({ sentence }) => sentence)).toEqual([
      'Panel left (2) was told started too early. Start Pegs (1) first.',
    ]);
    given.send('withdraw', { entry: early.number, why: '' }, { by: hill });
    given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill });
    const late = given.send('tell-started', { task: 'panel-left', crew: 'left' }, { by: hill });
    expect(late.breaches).toBeUndefined();
  });
});

describe('work told during a halt', () => {
  it('is marked when it starts or resumes', () => {
    const given = site();
    given.send('halt', { why: 'rope parted' }, { by: dale, at: 5 });
    const entry = given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill, at: 6 });
    expect(entry.breaches).toEqual([
      { rule: 'halt', sentence: 'Pegs (1) was told started while a halt is on.', of: ['pegs'] },
    ]);
    expect(given.task('pegs').status).toBe('at-work');
  });

  it('is no breach when it finishes or stops', () => {
    const given = site();
    given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill, at: 1 });
    given.send('halt', { why: '' }, { by: dale, at: 5 });
    const entry = given.send('tell-finished', { task: 'pegs', crew: 'left' }, { by: hill, at: 6 });
    expect(entry.breaches).toBeUndefined();
    expect(given.task('pegs').status).toBe('done');
  });

  it('is no breach when it began before the halt and arrives late, and stands stopped', () => {
    const given = site();
    given.send('halt', { why: '' }, { by: dale, at: 5 });
    const entry = given.send(
      'tell-started',
      { task: 'pegs', crew: 'left' },
      { by: hill, at: 2, received: 8 },
    );
    expect(entry.breaches).toBeUndefined();
    expect(given.task('pegs')).toMatchObject({ status: 'stopped', startedAt: clock(2) });
  });
});

describe('work told in the closed zones of a running keep-off task', () => {
  it('is recorded and marked, naming task and zone', () => {
    const given = beforeMove();
    given.clear(25);
    given.send('start-keep-off', { task: 'move' }, { at: 26 });
    const entry = given.send('tell-started', { task: 'deck', crew: 'right' }, { by: dale, at: 27 });
    expect(entry.breaches?.[0]).toEqual({
      rule: 'keep-off',
      sentence: 'Deck bay 1 (7) was told started while Move 1 (6) closes assembly.',
      of: ['move', 'assembly'],
    });
  });

  it('is no breach when it happened before that task began and arrives late', () => {
    const given = beforeMove();
    given.clear(25);
    given.send('start-keep-off', { task: 'move' }, { at: 26 });
    const entry = given.send(
      'tell-finished',
      { task: 'pegs', crew: 'right' },
      { by: dale, at: 24, received: 27 },
    );
    expect(entry.breaches).toBeUndefined();
    const late = given.send(
      'tell-started',
      { task: 'deck', crew: 'right' },
      { by: dale, at: 24, received: 27 },
    );
    expect(late.breaches?.map(({ rule }) => rule)).toEqual(['order']);
  });

  it('is no breach elsewhere on the site', () => {
    const given = beforeMove();
    given.clear(25);
    given.send('start-keep-off', { task: 'move' }, { at: 26 });
    const entry = given.send(
      'tell-started',
      { task: 'unload', crew: 'right' },
      { by: dale, at: 27 },
    );
    expect(entry.breaches).toBeUndefined();
  });
});

describe('a keep-off task told started instead of asked for', () => {
  it('is always a breach, even when everything else is in order', () => {
    const given = beforeMove();
    given.clear(25);
    const entry = given.send('tell-started', { task: 'move', crew: 'left' }, { by: hill, at: 26 });
    expect(entry.breaches?.map(({ rule }) => rule)).toEqual(['keep-off']);
    expect(given.task('move').status).toBe('at-work');
  });

  it('names the work that goes on in its zones', () => {
    const given = beforeMove();
    given.send('tell-started', { task: 'deck', crew: 'right' }, { by: dale, at: 24 });
    const entry = given.send('tell-started', { task: 'move', crew: 'left' }, { by: hill, at: 26 });
    expect(entry.breaches?.map(({ sentence }) => sentence)).toEqual([
      'Move 1 (6) was told started without being asked for: nobody made sure that its zones are clear.',
      'Move 1 (6) was told started while Deck bay 1 (7) is at work in its zones.',
    ]);
  });

  it('is no breach when its start was granted and a crew ticks it too', () => {
    const given = beforeMove();
    given.clear(25);
    given.send('start-keep-off', { task: 'move' }, { at: 26 });
    const entry = given.send('tell-started', { task: 'move', crew: 'left' }, { by: hill, at: 26 });
    expect(entry.breaches).toBeUndefined();
  });
});
