import { describe, expect, it } from 'vitest';
import { holdsOf } from '#domain/progress/views/holds.ts';
import { holdUps } from '#domain/progress/views/holdUps.ts';
import { openedOf } from '#domain/progress/views/opened.ts';
import { percentComplete } from '#domain/progress/views/percent.ts';
import { phaseNow } from '#domain/progress/views/phase.ts';
import { withdrawable } from '#domain/progress/views/recent.ts';
import { strengthOf } from '#domain/progress/views/strength.ts';
import {
  beforeMove,
  clock,
  dale,
  hill,
  inspector,
  leader,
  opening,
  Site,
  site,
  siteWork,
  task,
} from '../site.ts';

function opened() {
  const given = beforeMove();
  given.clear(25);
  given.send('start-keep-off', { task: 'move' }, { at: 26 });
  given.send('tell-finished', { task: 'move', crew: 'left' }, { by: hill, at: 29 });
  given.finish('deck', 30);
  given.finish('unload', 30);
  given.pass('open', 40);
  return given;
}

describe('per cent complete', () => {
  it('is person-minutes done over all: expected minutes times usual people', () => {
    const given = site();
    expect(percentComplete(given.state)).toMatchObject({ done: 0, share: 0 });
    // Most tasks: (4 + 4 x 5 + 12) / 6 = 6 min; 6 people, two times 4 at the lift, 3 unload: 24 + 8 + 3 people.
    // The move: (2 + 12 + 7) / 6 = 3.5 min times 4 people. Holds have no people.
    const total = 6 * (4 * 6 + 8 + 3) + 3.5 * 4;
    given.finish('pegs', 0);
    given.send('tell-part', { task: 'unload', crew: 'right', part: 0.5 }, { by: dale });
    const now = percentComplete(given.state);
    expect(now.total).toBeCloseTo(total, 9);
    expect(now.done).toBeCloseTo(6 * 6 + 0.5 * 6 * 3, 9);
    expect(now.share).toBeCloseTo(45 / 224, 9);
  });

  it('is whole at the end', () => {
    expect(percentComplete(opened().state).share).toBeCloseTo(1, 9);
  });

  it('takes every task for one person’s where no people are named, and is 0 without tasks', () => {
    const given = new Site();
    const alone = (id: string, number: number) =>
      task({ id, number, needs: [], minutes: { quick: 5, likely: 5, slow: 5 } });
    given.take(opening({ ...siteWork, tasks: [alone('a', 1), alone('b', 2)], links: [] }));
    given.send('tell-finished', { task: 'a', crew: 'left' });
    expect(percentComplete(given.state)).toEqual({ done: 5, total: 10, share: 0.5 });
    const empty = new Site();
    empty.take(opening({ ...siteWork, tasks: [], links: [] }));
    expect(percentComplete(empty.state).share).toBe(0);
  });
});

describe('strength', () => {
  it('sums all crews, attached ones too; the hurt are on site until the next count', () => {
    const given = site();
    expect(strengthOf(given.state)).toEqual({ onSite: 15, planned: 15, fit: 15, hurt: 0 });
    given.send('tell-hurt', { crew: 'left', what: 'hand', outOfWork: true }, { by: hill, at: 1 });
    expect(strengthOf(given.state)).toEqual({ onSite: 15, planned: 15, fit: 14, hurt: 1 });
    given.send('tell-strength', { crew: 'left', fit: 6 }, { by: hill, at: 2 });
    expect(strengthOf(given.state)).toEqual({ onSite: 14, planned: 15, fit: 14, hurt: 1 });
  });
});

describe('the phase now', () => {
  it('is that of the foremost work going on, else of the first task not done', () => {
    const given = site();
    expect(phaseNow(given.state)).toBe('Site');
    given.finish('pegs', 0);
    expect(phaseNow(given.state)).toBe('Bays');
    given.send('tell-started', { task: 'unload', crew: 'right' }, { by: dale, at: 6 });
    expect(phaseNow(given.state)).toBe('Stores');
  });

  it('is open once traffic may cross', () => {
    expect(phaseNow(opened().state)).toBe('Open to traffic');
  });
});

describe('the opening', () => {
  it('is when the task that opens was passed', () => {
    expect(openedOf(beforeMove().state)).toEqual({ open: false, since: null });
    expect(openedOf(opened().state)).toEqual({ open: true, since: clock(40) });
  });

  it('is the last of the holds where no task opens, and the last of all where there is no hold', () => {
    const plain = siteWork.tasks.filter(({ hold }) => !hold).slice(0, 2);
    const given = site({ ...siteWork, tasks: plain, links: [] });
    given.finish('pegs', 0);
    expect(openedOf(given.state).open).toBe(false);
    given.finish('panel-left', 9);
    expect(openedOf(given.state)).toEqual({ open: true, since: clock(14) });
  });

  it('is none before there is any work', () => {
    const empty = new Site();
    empty.take(opening({ ...siteWork, tasks: [], links: [] }));
    expect(openedOf(empty.state)).toEqual({ open: false, since: null });
  });
});

describe('holds', () => {
  it('are listed with what was found', () => {
    const given = beforeMove();
    given.send('tell-wind', { speed: 14 }, { at: 22 });
    expect(holdsOf(given.state)).toMatchObject([
      { task: 'check', number: 5, status: 'lapsed', at: clock(22), why: 'wind of 14 m/s' },
      { task: 'open', number: 9, status: 'open', at: null, why: null },
    ]);
  });
});

describe('what holds the build up', () => {
  function sentences(given: Site, at: number): string[] {
    return holdUps(given.state, clock(at)).map(({ sentence }) => sentence);
  }

  it('is nothing on a quiet site', () => {
    expect(sentences(site(), 0)).toEqual([]);
  });

  it('is stores that are told late, or due and not in', () => {
    const given = site();
    expect(sentences(given, 13)).toEqual(['Truck 1 is not in, expected 3 min ago.']);
    given.send('tell-load-late', { load: 'truck', minutes: 12, why: 'flat tyre' }, { at: 14 });
    expect(sentences(given, 14)).toEqual(['Truck 1 is 12 min late (flat tyre).']);
    expect(sentences(given, 27)).toEqual([
      'Truck 1 is 12 min late (flat tyre), expected 5 min ago.',
    ]);
    given.send('tell-load-in', { load: 'truck' }, { at: 28 });
    expect(sentences(given, 30)).toEqual([]);
  });

  it('is stopped and disputed work, short parts, failed holds, a halt, the gravest first', () => {
    const given = site();
    given.send('tell-load-in', { load: 'truck' }, { at: 0 });
    for (const id of ['pegs', 'panel-left', 'panel-right', 'lift']) given.finish(id, 0);
    const failing = { task: 'check', name: 'WO Finch', values: {}, why: 'left side low' };
    given.send('fail-hold', failing, { by: inspector, at: 10 });
    given.send('tell-short', { part: 'deck planks', count: 4, task: 'deck' }, { at: 11 });
    given.send('tell-short', { part: 'pegs', count: 1, task: 'pegs' }, { at: 11 });
    given.send('tell-started', { task: 'unload', crew: 'right' }, { by: dale, at: 12 });
    given.send('halt', { why: 'rope' }, { at: 13 });
    expect(sentences(given, 15)).toEqual([
      'A halt is on since 2 min: rope.',
      'Check before the move (5) failed: left side low.',
      'Unload (8) is stopped: halt.',
      '4 short: deck planks.',
    ]);
  });

  it('is work that has taken longer than its slow estimate', () => {
    const given = site();
    given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill, at: 0 });
    expect(sentences(given, 9.9)).toEqual([]);
    given.send('tell-load-in', { load: 'truck' }, { at: 10 });
    expect(sentences(given, 12)).toEqual([]);
    expect(sentences(given, 13)).toEqual(['Pegs (1) has taken 13 min, slow would be 12.']);
  });
});

describe('what an author may withdraw now', () => {
  it('is the own tells of the last ten minutes, for the leader all recent ones', () => {
    const given = site();
    given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill, at: 0 });
    given.send('tell-wind', { speed: 4 }, { by: dale, at: 3 });
    given.send('halt', { why: '' }, { by: hill, at: 4 });
    const kinds = (by: typeof hill, at: number) =>
      withdrawable(given.state, by, clock(at)).map(({ kind }) => kind);
    expect(kinds(hill, 5)).toEqual(['task-started']);
    expect(kinds(hill, 10.5)).toEqual([]);
    expect(kinds(dale, 10.5)).toEqual(['wind-told']);
    expect(kinds(leader, 30)).toEqual(['task-started', 'wind-told']);
  });

  it('is exactly what would not be refused', () => {
    const given = site();
    given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill, at: 0 });
    given.send('tell-hurt', { crew: 'left', what: 'hand', outOfWork: false }, { by: hill, at: 6 });
    for (const { entry } of withdrawable(given.state, hill, clock(11)))
      given.send('withdraw', { entry, why: '' }, { by: hill, at: 11 });
    expect(given.state.withdrawn).toHaveLength(1);
    expect(withdrawable(given.state, hill, clock(11))).toEqual([]);
  });
});
