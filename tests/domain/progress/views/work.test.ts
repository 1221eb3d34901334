import { describe, expect, it } from 'vitest';
import { crewNow } from '#domain/progress/views/crewNow.ts';
import { readiness } from '#domain/progress/views/readiness.ts';
import { zonesNow } from '#domain/progress/views/zonesNow.ts';
import { beforeMove, clock, crew, dale, hill, log, need, site, siteWork, task } from '../site.ts';

type Given = ReturnType<typeof site>;

function waits(given: Given, task: string, at: number): [string, string][] {
  return readiness(given.state, task, clock(at)).waitsFor.map(({ kind, of }) => [kind, of]);
}

describe('readiness', () => {
  it('is given when nothing stands against a task', () => {
    expect(readiness(site().state, 'pegs', clock(0))).toEqual({ ready: true, waitsFor: [] });
  });

  it('waits for tasks before it and for stores, each said in a sentence', () => {
    const { ready, waitsFor } = readiness(site().state, 'panel-left', clock(4));
    expect(ready).toBe(false);
    expect(waitsFor).toEqual([
      { kind: 'task', of: 'pegs', sentence: 'Finish Pegs (1) first: it is not started.' },
      { kind: 'load', of: 'truck', sentence: 'Truck 1 is not here: expected in 6 min.' },
    ]);
  });

  it('waits for stores until they are told in, not until they are due', () => {
    const given = site();
    given.finish('pegs', 0);
    expect(waits(given, 'panel-left', 15)).toEqual([['load', 'truck']]);
    given.send('tell-load-in', { load: 'truck' }, { at: 16 });
    expect(waits(given, 'panel-left', 16)).toEqual([]);
  });

  it('waits for a wait, and only so long', () => {
    const links = siteWork.links.map((link) =>
      link.to === 'panel-left' ? { ...link, wait: 20 } : link,
    );
    const given = site({ ...siteWork, links });
    given.finish('pegs', 0);
    given.send('tell-load-in', { load: 'truck' }, { at: 1 });
    const at = (minutes: number) => readiness(given.state, 'panel-left', clock(minutes));
    expect(at(17).waitsFor).toEqual([
      { kind: 'wait', of: 'pegs', sentence: 'Wait 8 minutes more after Pegs (1).' },
    ]);
    expect(at(25).ready).toBe(true);
  });

  it('waits for a hold, for a halt, and for a keep-off task that closes its zone', () => {
    const given = site();
    for (const id of ['pegs', 'panel-left', 'panel-right', 'lift']) given.finish(id, 0);
    expect(waits(given, 'move', 20)).toEqual([['hold', 'check']]);
    given.pass('check', 20);
    given.clear(21);
    given.send('start-keep-off', { task: 'move' }, { at: 22 });
    expect(waits(given, 'deck', 23)).toEqual([
      ['task', 'move'],
      ['keep-off', 'move'],
    ]);
    given.send('halt', { why: '' }, { at: 24 });
    expect(waits(given, 'unload', 25)).toEqual([['halt', '']]);
  });

  it('of a keep-off task waits for work in its zones', () => {
    const given = beforeMove();
    given.send('tell-started', { task: 'deck', crew: 'right' }, { by: dale, at: 21 });
    expect(waits(given, 'move', 22)).toEqual([['keep-off', 'deck']]);
  });

  it('waits for a crew that has too few people free, or is not on site yet', () => {
    const given = site();
    given.send('tell-started', { task: 'unload', crew: 'right' }, { by: dale, at: 1 });
    given.finish('pegs', 1);
    given.send('tell-load-in', { load: 'truck' }, { at: 6 });
    expect(waits(given, 'panel-right', 7)).toEqual([]);
    given.send('tell-strength', { crew: 'right', fit: 5 }, { by: dale, at: 8 });
    // Three unload; two are left where at least three are needed.
    expect(readiness(given.state, 'panel-right', clock(9)).waitsFor).toEqual([
      {
        kind: 'crew',
        of: 'right',
        sentence: 'Right girder has 2 free, this takes at least 3.',
      },
    ]);
    const night = {
      ...siteWork,
      crews: [...siteWork.crews, crew('night', 'Night crew', 6, { from: 480 })],
      tasks: siteWork.tasks.map((each) =>
        each.id === 'unload' ? { ...each, needs: [need('night', 3)] } : each,
      ),
    };
    expect(waits(site(night), 'unload', 60)).toEqual([['crew', 'night']]);
    expect(waits(site(night), 'unload', 480)).toEqual([]);
  });

  it('is not given to a task at work or done, which waits for nothing', () => {
    const given = site();
    given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill });
    expect(readiness(given.state, 'pegs', clock(1))).toEqual({ ready: false, waitsFor: [] });
  });
});

describe('a crew’s card', () => {
  function card(given: Given, crewId: string, at: number): string[][] {
    const { now, ready, next } = crewNow(given.state, crewId, clock(at));
    return [now, ready, next].map((jobs) => jobs.map(({ task }) => task));
  }

  it('shows nothing at work at first, what is ready, and the next two in planned order', () => {
    expect(card(site(), 'left', 0)).toEqual([[], ['pegs'], ['panel-left', 'lift']]);
    expect(card(site(), 'right', 0)).toEqual([[], ['unload'], ['panel-right', 'lift']]);
  });

  it('shows two jobs of two half-crews, and stopped ones among them with why', () => {
    const given = site();
    given.finish('pegs', 0);
    given.send('tell-load-in', { load: 'truck' }, { at: 5 });
    given.send('tell-started', { task: 'unload', crew: 'right' }, { by: dale, at: 6 });
    given.send('tell-started', { task: 'panel-right', crew: 'right' }, { by: dale, at: 6 });
    given.send(
      'tell-stopped',
      { task: 'panel-right', crew: 'right', why: 'no pins' },
      { by: dale, at: 8 },
    );
    expect(card(given, 'right', 9)).toEqual([['panel-right', 'unload'], [], ['lift', 'deck']]);
    const [panel] = crewNow(given.state, 'right', clock(9)).now;
    expect(panel).toMatchObject({ status: 'stopped', why: 'no pins', people: 6, number: 3 });
    expect(panel?.readiness.ready).toBe(true);
  });

  it('offers a joint task that the other crew has begun, until a halt is on', () => {
    const given = site();
    for (const id of ['pegs', 'panel-left', 'panel-right']) given.finish(id, 0);
    given.send('tell-started', { task: 'lift', crew: 'left' }, { by: hill, at: 16 });
    const right = () => crewNow(given.state, 'right', clock(17)).ready.map(({ task }) => task);
    expect(right()).toContain('lift');
    given.send('halt', { why: '' }, { at: 18 });
    expect(right()).toEqual([]);
  });

  it('no longer shows the own share of a joint task once it was told done', () => {
    const given = site();
    for (const id of ['pegs', 'panel-left', 'panel-right']) given.finish(id, 0);
    given.send('tell-started', { task: 'lift', crew: 'left' }, { by: hill, at: 6 });
    given.send('tell-started', { task: 'lift', crew: 'right' }, { by: dale, at: 6 });
    given.send('tell-finished', { task: 'lift', crew: 'left' }, { by: hill, at: 8 });
    expect(card(given, 'left', 9)[0]).toEqual([]);
    expect(card(given, 'right', 9)[0]).toEqual(['lift']);
    const [lift] = crewNow(given.state, 'right', clock(9)).now;
    expect(lift?.with).toEqual(['left']);
  });

  it('says of a keep-off task that it has to be asked for', () => {
    const given = beforeMove();
    const [move] = crewNow(given.state, 'left', clock(21)).ready;
    expect(move).toMatchObject({ task: 'move', keepOff: true, hold: false, people: 4 });
  });

  it('offers a second job only with people for both', () => {
    const withTwo = (people: number) => {
      const signs = task({ id: 'signs', number: 10, needs: [need('left', people)] });
      return card(site({ ...siteWork, tasks: [...siteWork.tasks, signs] }), 'left', 0);
    };
    // Pegs take six of the seven.
    expect(withTwo(1)[1]).toEqual(['pegs', 'signs']);
    expect(withTwo(4)).toEqual([[], ['pegs'], ['panel-left', 'lift']]);
  });

  it('says of a job out of turn which earlier one it would leave short, and what that one waits for', () => {
    const ready = (people: number) => {
      const signs = task({ id: 'signs', number: 10, needs: [need('left', people)] });
      const given = site({ ...siteWork, tasks: [...siteWork.tasks, signs] });
      given.finish('pegs', 0);
      // Panel left takes six of the seven, and its truck is not here.
      return crewNow(given.state, 'left', clock(5)).ready;
    };
    expect(ready(4)).toMatchObject([
      {
        task: 'signs',
        ahead: {
          name: 'Panel left',
          sentence: 'Truck 1 is not here: expected in 5 min.',
        },
      },
    ]);
    expect(ready(1)[0]?.task).toBe('signs');
    expect(ready(1)[0]?.ahead).toBeUndefined();
  });

  it('goes by the needs of tasks before there is a plan', () => {
    const given = site();
    const state = { ...given.state, plan: null };
    expect(crewNow(state, 'left', clock(0)).ready.map(({ task }) => task)).toEqual(['pegs']);
  });
});

describe('zones', () => {
  it('show who should be there by what was told, and which keep-off task closes them', () => {
    const given = beforeMove();
    given.send('tell-started', { task: 'unload', crew: 'right' }, { by: log, at: 21 });
    expect(zonesNow(given.state)).toEqual([
      { zone: 'stores', people: 3, tasks: ['unload'], closedBy: null },
      { zone: 'assembly', people: 0, tasks: [], closedBy: null },
      { zone: 'landing', people: 0, tasks: [], closedBy: null },
    ]);
    given.clear(22);
    given.send('start-keep-off', { task: 'move' }, { at: 23 });
    expect(zonesNow(given.state).slice(1)).toEqual([
      { zone: 'assembly', people: 4, tasks: ['move'], closedBy: 'move' },
      { zone: 'landing', people: 4, tasks: ['move'], closedBy: 'move' },
    ]);
  });
});
