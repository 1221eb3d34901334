import { describe, expect, it } from 'vitest';
import { clock, dale, hill, log, site } from './site.ts';

describe('the strength of a crew', () => {
  it('is what was told last, also above the plan', () => {
    const given = site();
    given.send('tell-strength', { crew: 'left', fit: 9 }, { by: hill, at: 4 });
    expect(given.state.crews.left).toMatchObject({ fit: 9, toldAt: clock(4) });
  });

  it('is the count that was made last when counts arrive in another order', () => {
    const given = site();
    given.send('tell-strength', { crew: 'left', fit: 5 }, { by: log, saidBy: 'Sgt Hill', at: 9 });
    given.send('tell-strength', { crew: 'left', fit: 7 }, { by: hill, at: 2, received: 12 });
    expect(given.state.crews.left).toMatchObject({ fit: 5, toldAt: clock(9) });
  });

  it('is one less for each person hurt and out of work, and the same for one who works on', () => {
    const given = site();
    given.send('tell-hurt', { crew: 'left', what: 'hand', outOfWork: true }, { by: hill, at: 1 });
    given.send('tell-hurt', { crew: 'left', what: 'graze', outOfWork: false }, { by: hill, at: 2 });
    expect(given.state.crews.left).toMatchObject({ fit: 6, hurt: 2, outOfWork: 1 });
    expect(given.state.events.map(({ sentence }) => sentence)).toEqual([
      'Left girder: one hurt and out of work, hand.',
      'Left girder: one hurt, graze.',
    ]);
  });

  it('takes a count after the injury as it is', () => {
    const given = site();
    given.send('tell-hurt', { crew: 'left', what: 'hand', outOfWork: true }, { by: hill, at: 1 });
    given.send('tell-strength', { crew: 'left', fit: 6 }, { by: hill, at: 2 });
    expect(given.state.crews.left).toMatchObject({ fit: 6, hurt: 1, outOfWork: 0 });
  });

  it('is never below nobody', () => {
    const given = site();
    given.send('tell-strength', { crew: 'left', fit: 0 }, { by: hill, at: 1 });
    given.send('tell-hurt', { crew: 'left', what: 'hand', outOfWork: true }, { by: hill, at: 2 });
    expect(given.state.crews.left?.fit).toBe(0);
  });
});

describe('a load', () => {
  it('is late by so many minutes against the order of work, however often that is told', () => {
    const given = site();
    given.send('tell-load-late', { load: 'truck', minutes: 12, why: 'tyre' }, { at: 5 });
    given.send('tell-load-late', { load: 'truck', minutes: 20, why: 'still tyre' }, { at: 8 });
    expect(given.state.loads.truck).toMatchObject({
      status: 'late',
      at: clock(30),
      why: 'still tyre',
    });
  });

  it('is in from when it came', () => {
    const given = site();
    given.send('tell-load-late', { load: 'truck', minutes: 12, why: 'tyre' }, { at: 5 });
    given.send('tell-load-in', { load: 'truck' }, { by: dale, at: 19 });
    expect(given.state.loads.truck).toMatchObject({ status: 'in', at: clock(19), why: null });
  });
});

describe('water and wind', () => {
  it('are as read last, whatever order the readings arrive in; a level that was not read stays', () => {
    const given = site();
    given.send('tell-water', { rise: 0.02, level: 2.1 }, { at: 3 });
    given.send('tell-water', { rise: 0.04, level: null }, { at: 9 });
    given.send('tell-water', { rise: 0.03, level: 2.2 }, { at: 6, received: 12 });
    expect(given.state.water).toMatchObject({ rise: 0.04, level: 2.2, at: clock(9) });
    given.send('tell-wind', { speed: 6 }, { at: 4 });
    given.send('tell-wind', { speed: 3 }, { at: 2, received: 5 });
    expect(given.state.wind).toMatchObject({ speed: 6, at: clock(4) });
  });
});

describe('parts told short and near misses', () => {
  it('are kept as things worth saying', () => {
    const given = site();
    given.send('tell-short', { part: 'pins', count: 2, task: 'lift' }, { by: hill });
    given.send('tell-near-miss', { what: 'panel slipped' }, { by: hill });
    expect(given.state.events.map(({ kind, sentence }) => [kind, sentence])).toEqual([
      ['short', '2 short: pins.'],
      ['near-miss', 'Near miss: panel slipped.'],
    ]);
  });
});
