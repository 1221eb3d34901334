import { describe, expect, it } from 'vitest';
import { rollCall } from '#domain/progress/rules/halt.ts';
import {
  clock,
  commander,
  crew,
  dale,
  hill,
  inspector,
  leader,
  log,
  type Site,
  site,
  siteWork,
} from './site.ts';

function answer(given: Site, at = 6): void {
  given.send('acknowledge-halt', { crew: 'left', people: 7, of: 7 }, { by: hill, at });
  given.send('acknowledge-halt', { crew: 'right', people: 7, of: 7 }, { by: dale, at });
  given.send('acknowledge-halt', { crew: 'medic', people: 1, of: 1 }, { by: log, at });
}

describe('calling a halt', () => {
  it('is anyone’s on site, and not the commander’s, who watches', () => {
    for (const by of [leader, log, hill, inspector]) {
      const given = site();
      given.send('halt', { why: 'rope parted' }, { by, at: 5 });
      expect(given.state.halt).toMatchObject({ why: 'rope parted', by, acknowledged: {} });
    }
    expect(site().refusal('halt', { why: '' }, { by: commander }).code).toBe('role-cannot');
  });

  it('stops what is at work, and leaves the rest as it is', () => {
    const given = site();
    given.finish('pegs');
    given.send('tell-started', { task: 'panel-left', crew: 'left' }, { by: hill, at: 4 });
    const entry = given.send('halt', { why: '' }, { by: dale, at: 5 });
    expect(entry.consequence?.stopped).toEqual(['panel-left']);
    expect(given.task('panel-left')).toMatchObject({ status: 'stopped', why: 'halt' });
    expect(given.task('pegs').status).toBe('done');
    expect(given.task('panel-right').status).toBe('to-come');
  });

  it('is an overlay: work told finished during it counts', () => {
    const given = site();
    given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill, at: 1 });
    given.send('halt', { why: '' }, { by: dale, at: 5 });
    given.send('tell-finished', { task: 'pegs', crew: 'left' }, { by: hill, at: 6 });
    expect(given.task('pegs').status).toBe('done');
  });

  it('starts the roll call anew when it is called again', () => {
    const given = site();
    given.send('halt', { why: 'first' }, { by: dale, at: 5 });
    answer(given);
    given.send('halt', { why: 'second' }, { by: hill, at: 8 });
    expect(given.state.halt).toMatchObject({
      why: 'second',
      at: clock(8),
      since: clock(5),
      acknowledged: {},
    });
    expect(given.refusal('lift-halt', { name: 'Lt Moor' }, { at: 9 }).code).toBe('roll-call-open');
  });
});

describe('lifting a halt', () => {
  it('is the leader’s, once every crew with people has answered with its count', () => {
    const given = site();
    given.send('halt', { why: '' }, { by: dale, at: 5 });
    answer(given);
    given.send('lift-halt', { name: 'Lt Moor' }, { at: 7 });
    expect(given.state.halt).toBeNull();
  });

  it('is refused to everybody else', () => {
    const given = site();
    given.send('halt', { why: '' }, { by: dale, at: 5 });
    answer(given);
    for (const by of [log, hill, inspector, commander])
      expect(given.refusal('lift-halt', { name: by.name }, { by }).code).toBe('role-cannot');
  });

  it('is refused while crews have not answered, naming them', () => {
    const given = site();
    given.send('halt', { why: '' }, { by: dale, at: 5 });
    given.send('acknowledge-halt', { crew: 'left', people: 7, of: 7 }, { by: hill, at: 6 });
    expect(given.refusal('lift-halt', { name: 'Lt Moor' }, { at: 7 })).toEqual({
      code: 'roll-call-open',
      sentence:
        'The roll call is open. Right girder has not answered: ask for its count. ' +
        'Medic has not answered: ask for its count.',
      of: ['right', 'medic'],
    });
  });

  it('is refused while a crew counts one too few', () => {
    const given = site();
    given.send('halt', { why: '' }, { by: dale, at: 5 });
    answer(given);
    given.send('acknowledge-halt', { crew: 'right', people: 6, of: 7 }, { by: dale, at: 7 });
    const refused = given.refusal('lift-halt', { name: 'Lt Moor' }, { at: 8 });
    expect(refused).toMatchObject({ code: 'roll-call-open', of: ['right'] });
    expect(refused.sentence).toContain('Right girder counts 6 of 7: find who is missing');
  });

  it('is refused while a crew counts one too few of more than were planned', () => {
    const given = site();
    given.send('halt', { why: '' }, { by: dale, at: 5 });
    answer(given);
    given.send('acknowledge-halt', { crew: 'right', people: 7, of: 8 }, { by: dale, at: 7 });
    const refused = given.refusal('lift-halt', { name: 'Lt Moor' }, { at: 8 });
    expect(refused.of).toEqual(['right']);
  });

  it('is granted when the one missing was hurt and is told out of work', () => {
    const given = site();
    given.send('halt', { why: '' }, { by: dale, at: 5 });
    answer(given);
    given.send('tell-hurt', { crew: 'right', what: 'hand', outOfWork: true }, { by: dale, at: 6 });
    given.send('acknowledge-halt', { crew: 'right', people: 6, of: 6 }, { by: dale, at: 7 });
    given.send('lift-halt', { name: 'Lt Moor' }, { at: 8 });
    expect(given.state.halt).toBeNull();
  });

  it('lets nothing resume by itself', () => {
    const given = site();
    given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill, at: 1 });
    given.send('halt', { why: '' }, { by: dale, at: 5 });
    answer(given);
    given.send('lift-halt', { name: 'Lt Moor' }, { at: 7 });
    expect(given.task('pegs').status).toBe('stopped');
    const entry = given.send('tell-resumed', { task: 'pegs', crew: 'left' }, { by: hill, at: 8 });
    expect(entry.breaches).toBeUndefined();
    expect(given.task('pegs').status).toBe('at-work');
  });

  it('is refused when no halt is on', () => {
    expect(site().refusal('lift-halt', { name: 'Lt Moor' }).code).toBe('no-halt');
  });
});

describe('the roll call', () => {
  it('is answered by a chief for the own crew, by leader and log keeper for any by radio', () => {
    const given = site();
    given.send('halt', { why: '' }, { by: dale, at: 5 });
    const body = { crew: 'right', people: 7, of: 7 };
    expect(given.refusal('acknowledge-halt', body, { by: hill }).code).toBe('not-your-crew');
    expect(given.refusal('acknowledge-halt', body, { by: inspector }).code).toBe('role-cannot');
    given.send('acknowledge-halt', body, { by: log, at: 6 });
    expect(Object.keys(given.state.halt!.acknowledged)).toEqual(['right']);
  });

  it('asks no crew whose hours are not now, unless it was heard of', () => {
    const night = crew('night', 'Night crew', 6, { from: 480 });
    const given = site({ ...siteWork, crews: [...siteWork.crews, night] });
    given.send('halt', { why: '' }, { by: dale, at: 5 });
    const asked = (at: number) => rollCall(given.state, clock(at)).map((each) => each.crew);
    expect(asked(10)).toEqual(['left', 'right', 'medic']);
    expect(asked(480)).toEqual(['left', 'right', 'medic', 'night']);
    given.send('tell-strength', { crew: 'night', fit: 6 }, { by: log, at: 11 });
    expect(asked(12)).toEqual(['left', 'right', 'medic', 'night']);
  });

  it('takes an answer to an earlier call without effect', () => {
    const given = site();
    given.send('halt', { why: 'first' }, { by: dale, at: 5 });
    given.send('halt', { why: 'second' }, { by: dale, at: 8 });
    const body = { crew: 'left', people: 7, of: 7 };
    given.send('acknowledge-halt', body, { by: hill, at: 6, received: 10 });
    expect(given.state.halt?.acknowledged).toEqual({});
    given.send('acknowledge-halt', body, { by: hill, at: 11 });
    expect(given.state.halt?.acknowledged).toHaveProperty('left');
  });

  it('takes an answer that arrives after the halt was lifted without effect', () => {
    const given = site();
    given.send('acknowledge-halt', { crew: 'left', people: 7, of: 7 }, { by: hill });
    expect(given.state.halt).toBeNull();
  });
});
