import { describe, expect, it } from 'vitest';
import { keepOffCheck } from '#domain/progress/views/keepOff.ts';
import {
  beforeMove,
  commander,
  crew,
  dale,
  hill,
  inspector,
  leader,
  log,
  need,
  opening,
  Site,
  site,
  siteWork,
} from './site.ts';

describe('asking for a keep-off task', () => {
  it('is granted when all is done, passed, off and seen clear, and puts it to work', () => {
    const given = beforeMove();
    given.clear(25);
    given.send('start-keep-off', { task: 'move' }, { at: 26 });
    expect(given.task('move').status).toBe('at-work');
    expect(given.task('move').shares).toMatchObject([{ crew: 'left', status: 'at-work' }]);
    expect(given.state.clearances).toEqual({});
  });

  it('may come from the leader, the log keeper and the chief whose people are in it', () => {
    for (const by of [leader, log, hill]) {
      const given = beforeMove();
      given.clear(25);
      given.send('start-keep-off', { task: 'move' }, { by, at: 26 });
      expect(given.task('move').status).toBe('at-work');
    }
  });

  it('is refused to anybody else', () => {
    const given = beforeMove();
    given.clear(25);
    const codes = [dale, inspector, commander].map(
      (by) => given.refusal('start-keep-off', { task: 'move' }, { by, at: 26 }).code,
    );
    expect(codes).toEqual(['not-your-crew', 'role-cannot', 'role-cannot']);
  });

  it('is refused while a halt is on, before anything else', () => {
    const given = site();
    given.send('halt', { why: '' }, { by: dale });
    expect(given.refusal('start-keep-off', { task: 'pegs' }).code).toBe('halt-on');
  });

  it('is refused for a task that closes nothing', () => {
    expect(site().refusal('start-keep-off', { task: 'pegs' }).code).toBe('not-keep-off');
  });

  it('is refused while it runs, and once it is done', () => {
    const given = beforeMove();
    given.clear(25);
    given.send('start-keep-off', { task: 'move' }, { at: 26 });
    expect(given.refusal('start-keep-off', { task: 'move' }).code).toBe('already-running');
    given.send('tell-finished', { task: 'move', crew: 'left' }, { by: hill, at: 29 });
    expect(given.refusal('start-keep-off', { task: 'move' }).code).toBe('already-running');
  });

  it('is refused while anything before it is open, however far back', () => {
    const given = beforeMove();
    given.send('reopen-task', { task: 'pegs', why: 'peg out of line', also: [] }, { at: 22 });
    given.clear(25);
    const refused = given.refusal('start-keep-off', { task: 'move' }, { at: 26 });
    expect(refused).toEqual({
      code: 'order-not-met',
      sentence: 'Finish Pegs (1) first: it is not started.',
      of: ['pegs'],
    });
  });

  it('names what is nearest: the tasks behind an open hold, and none behind those', () => {
    const given = site();
    given.finish('pegs');
    given.finish('panel-left');
    const refused = given.refusal('start-keep-off', { task: 'move' }, { at: 26 });
    expect(refused).toMatchObject({ code: 'order-not-met', of: ['lift'] });
    given.finish('lift');
    const skipped = given.refusal('start-keep-off', { task: 'move' }, { at: 36 });
    expect(skipped).toMatchObject({ code: 'order-not-met', of: ['panel-right'] });
  });

  it('waits for the end of what is before it, even where the link lets them overlap', () => {
    const links = siteWork.links.map((link) => (link.to === 'move' ? { ...link, wait: -2 } : link));
    const overlap = [...links, { from: 'unload', to: 'move', counts: 'finish', wait: -2 } as const];
    const given = site({ ...siteWork, links: overlap });
    for (const id of ['pegs', 'panel-left', 'panel-right', 'lift']) given.finish(id);
    given.pass('check', 20);
    given.send('tell-started', { task: 'unload', crew: 'right' }, { by: dale, at: 21 });
    given.clear(25);
    expect(given.refusal('start-keep-off', { task: 'move' }, { at: 26 })).toMatchObject({
      code: 'order-not-met',
      of: ['unload'],
    });
  });

  it('is refused while its hold is open or has lapsed', () => {
    const given = site();
    for (const id of ['pegs', 'panel-left', 'panel-right', 'lift']) given.finish(id);
    given.clear(25);
    expect(given.refusal('start-keep-off', { task: 'move' }, { at: 26 })).toEqual({
      code: 'hold-open',
      sentence: 'Check before the move (5) is not passed yet: have it inspected first.',
      of: ['check'],
    });
    given.pass('check', 26);
    given.send('tell-wind', { speed: 10 }, { at: 27 });
    const refused = given.refusal('start-keep-off', { task: 'move' }, { at: 28 });
    expect(refused).toMatchObject({ code: 'hold-open', of: ['check'] });
    expect(refused.sentence).toContain('(5) is lapsed');
  });

  it('is refused while somebody else is told at work in its zones, naming task and crew', () => {
    const given = beforeMove();
    given.send('tell-started', { task: 'deck', crew: 'right' }, { by: dale, at: 24 });
    given.clear(25);
    expect(given.refusal('start-keep-off', { task: 'move' }, { at: 26 })).toEqual({
      code: 'zone-occupied',
      sentence: 'Deck bay 1 (7) is at work by Right girder in assembly: stop or finish it.',
      of: ['assembly'],
    });
  });

  it('is granted while work goes on in zones that stay open', () => {
    const given = beforeMove();
    given.send('tell-started', { task: 'unload', crew: 'right' }, { by: dale, at: 24 });
    given.clear(25);
    given.send('start-keep-off', { task: 'move' }, { at: 26 });
    expect(given.task('move').status).toBe('at-work');
  });
});

describe('the head count for a keep-off task', () => {
  it('is asked of each crew concerned, and not of a medic who has no work there', () => {
    const given = beforeMove();
    const refused = given.refusal('start-keep-off', { task: 'move' }, { at: 26 });
    expect(refused).toEqual({
      code: 'crew-not-off',
      sentence:
        'Left girder has not told off: get 3 of 7 off and tell it. ' +
        'Right girder has not told off: get 7 of 7 off and tell it.',
      of: ['left', 'right'],
    });
  });

  it('must cover everyone fit but the people of the task itself', () => {
    const given = beforeMove();
    given.clear(25);
    given.send('tell-off', { task: 'move', crew: 'right', off: 6, of: 7 }, { by: dale, at: 25 });
    const refused = given.refusal('start-keep-off', { task: 'move' }, { at: 26 });
    expect(refused).toMatchObject({ code: 'crew-not-off', of: ['right'] });
    expect(refused.sentence).toBe(
      'Right girder told off 6 of 7: get 7 of 7 off and tell it again.',
    );
  });

  it('must count as many as are fit: "6 of 6" is not enough for a crew of seven', () => {
    const given = beforeMove();
    given.clear(25);
    given.send('tell-off', { task: 'move', crew: 'right', off: 6, of: 6 }, { by: dale, at: 25 });
    const refused = given.refusal('start-keep-off', { task: 'move' }, { at: 26 });
    expect(refused).toMatchObject({ code: 'crew-not-off', of: ['right'] });
  });

  it('must leave nobody of the crew on it: "7 of 8" is one too few', () => {
    const given = beforeMove();
    given.clear(25);
    given.send('tell-off', { task: 'move', crew: 'right', off: 7, of: 8 }, { by: dale, at: 25 });
    const refused = given.refusal('start-keep-off', { task: 'move' }, { at: 26 });
    expect(refused).toMatchObject({ code: 'crew-not-off', of: ['right'] });
  });

  it('is asked of a crew that told work in the zones, planned or not', () => {
    const given = beforeMove();
    given.send('tell-stopped', { task: 'deck', crew: 'medic', why: 'looked on' }, { by: log });
    given.clear(25);
    const refused = given.refusal('start-keep-off', { task: 'move' }, { at: 26 });
    expect(refused).toMatchObject({ code: 'crew-not-off', of: ['medic'] });
  });

  it('is not asked of a crew whose hours are not now', () => {
    const night = crew('night', 'Night crew', 6, { from: 480 });
    const tasks = siteWork.tasks.map((each) =>
      each.id === 'deck' ? { ...each, needs: [need('night', 6)] } : each,
    );
    const given = site({ ...siteWork, tasks, crews: [...siteWork.crews, night] });
    for (const id of ['pegs', 'panel-left', 'panel-right', 'lift']) given.finish(id);
    given.pass('check', 20);
    given.clear(470);
    expect(given.refusal('start-keep-off', { task: 'move' }, { at: 480 })).toMatchObject({
      code: 'crew-not-off',
      of: ['night'],
    });
    given.send('start-keep-off', { task: 'move' }, { at: 479 });
  });

  it('is asked of every crew but attached people, where no plan says who works in the zones', () => {
    const tasks = siteWork.tasks.map((each) =>
      each.id === 'deck' ? { ...each, needs: [{ ...each.needs[0]!, anyOf: [] }] } : each,
    );
    const given = new Site();
    given.take(opening({ ...siteWork, tasks }));
    const asked = keepOffCheck(given.state, 'move').filter(({ kind }) => kind === 'off');
    expect(asked.map(({ of }) => of)).toEqual(['left', 'right']);
  });

  it('is void when the crew is relieved', () => {
    const given = beforeMove();
    given.clear(25);
    given.send('tell-relief', { crew: 'right' }, { by: dale, at: 25 });
    expect(given.refusal('start-keep-off', { task: 'move' }, { at: 26 })).toMatchObject({
      code: 'crew-not-off',
      of: ['right'],
    });
  });

  it('is void when the strength of the crew changes', () => {
    const given = beforeMove();
    given.clear(25);
    given.send('tell-strength', { crew: 'right', fit: 8 }, { by: dale, at: 25 });
    expect(given.refusal('start-keep-off', { task: 'move' }, { at: 26 })).toMatchObject({
      code: 'crew-not-off',
      of: ['right'],
    });
  });

  it('is asked of nobody in a crew without people', () => {
    const given = beforeMove();
    given.clear(25);
    given.send('tell-strength', { crew: 'right', fit: 0 }, { by: dale, at: 25 });
    given.send('start-keep-off', { task: 'move' }, { at: 26 });
    expect(given.task('move').status).toBe('at-work');
  });
});

describe('"seen clear"', () => {
  it('is asked for on each bank', () => {
    const given = beforeMove();
    given.send('tell-off', { task: 'move', crew: 'left', off: 3, of: 7 }, { by: hill });
    given.send('tell-off', { task: 'move', crew: 'right', off: 7, of: 7 }, { by: dale });
    given.send('tell-clear', { task: 'move', bank: 'near', name: 'Cpl Ash', people: 12 });
    expect(given.refusal('start-keep-off', { task: 'move' }, { at: 26 })).toEqual({
      code: 'bank-not-clear',
      sentence: 'Have a named person on the far bank see the zones clear and count heads.',
      of: ['far'],
    });
  });

  it('is void, with the head counts, once work is told to start in its zones', () => {
    const given = beforeMove();
    given.clear(25);
    given.send('tell-started', { task: 'deck', crew: 'right' }, { by: dale, at: 25 });
    given.send(
      'tell-stopped',
      { task: 'deck', crew: 'right', why: 'came too early' },
      { by: dale, at: 26 },
    );
    expect(given.state.clearances).toEqual({});
    expect(given.refusal('start-keep-off', { task: 'move' }, { at: 27 }).code).toBe('crew-not-off');
  });

  it('is void, too, when work that counts as done is told to start once more', () => {
    const given = beforeMove();
    given.clear(25);
    given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill, at: 26 });
    expect(given.state.clearances).toEqual({});
  });

  it('does not count when it arrives after what made it void', () => {
    const late = { by: dale, at: 25, received: 40 };
    const off = { task: 'move', crew: 'right', off: 7, of: 7 };
    const far = { task: 'move', bank: 'far' as const, name: 'Cpl Elm', people: 3 };
    const voided = [
      (given: Site) =>
        given.send('tell-started', { task: 'deck', crew: 'right' }, { by: dale, at: 26 }),
      (given: Site) => given.send('halt', { why: '' }, { by: dale, at: 26 }),
    ];
    for (const happens of voided) {
      const given = beforeMove();
      happens(given);
      given.send('tell-off', off, late);
      given.send('tell-clear', far, late);
      expect(given.state.clearances).toEqual({});
    }
    const given = beforeMove();
    given.send('tell-strength', { crew: 'right', fit: 7 }, { by: dale, at: 26 });
    given.send('tell-off', off, late);
    given.send('tell-clear', far, late);
    expect(given.state.clearances.move).toMatchObject({ off: {}, clear: { far: {} } });
  });

  it('stays good when work starts elsewhere', () => {
    const given = beforeMove();
    given.clear(25);
    given.send('tell-started', { task: 'unload', crew: 'right' }, { by: dale, at: 25 });
    given.send('start-keep-off', { task: 'move' }, { at: 26 });
    expect(given.task('move').status).toBe('at-work');
  });

  it('is void after a halt', () => {
    const given = beforeMove();
    given.clear(25);
    given.send('halt', { why: '' }, { by: dale, at: 26 });
    expect(given.state.clearances).toEqual({});
  });
});

describe('a keep-off task that was stopped', () => {
  it('goes on only by the same ask again, with everything told anew', () => {
    const given = beforeMove();
    given.clear(25);
    given.send('start-keep-off', { task: 'move' }, { at: 26 });
    given.send('tell-stopped', { task: 'move', crew: 'left', why: 'roller' }, { by: hill, at: 27 });
    expect(given.refusal('start-keep-off', { task: 'move' }, { at: 28 }).code).toBe('crew-not-off');
    given.clear(29);
    given.send('start-keep-off', { task: 'move' }, { at: 30 });
    expect(given.task('move')).toMatchObject({ status: 'at-work', why: null });
  });

  it('is a breach when it is told resumed instead', () => {
    const given = beforeMove();
    given.clear(25);
    given.send('start-keep-off', { task: 'move' }, { at: 26 });
    given.send('tell-stopped', { task: 'move', crew: 'left', why: 'roller' }, { by: hill, at: 27 });
    const entry = given.send('tell-resumed', { task: 'move', crew: 'left' }, { by: hill, at: 28 });
    expect(entry.breaches?.map(({ rule }) => rule)).toEqual(['keep-off']);
  });
});

describe('the list of conditions', () => {
  it('shows every condition, met or not, in the order in which they are asked', () => {
    const given = beforeMove();
    given.send('tell-off', { task: 'move', crew: 'left', off: 3, of: 7 }, { by: hill });
    const shown = keepOffCheck(given.state, 'move').map(({ kind, of, met }) => [kind, of, met]);
    expect(shown).toEqual([
      ['halt', '', true],
      ['hold', 'check', true],
      ['zone', 'assembly', true],
      ['zone', 'landing', true],
      ['off', 'left', true],
      ['off', 'right', false],
      ['clear', 'near', false],
      ['clear', 'far', false],
    ]);
  });

  it('is all met exactly when the ask is granted', () => {
    const given = beforeMove();
    expect(keepOffCheck(given.state, 'move').every(({ met }) => met)).toBe(false);
    given.clear(25);
    expect(keepOffCheck(given.state, 'move').every(({ met }) => met)).toBe(true);
    given.send('start-keep-off', { task: 'move' }, { at: 26 });
  });
});
