import { describe, expect, it } from 'vitest';
import { changedAsTold, minutesAskedFor, workAsTold } from '#domain/progress/views/asTold.ts';
import { doubtInForce } from '#domain/progress/views/doubtInForce.ts';
import type { Change } from '#domain/tasks/change.ts';
import { ground } from '../../brief/buildState.ts';
import { dale, site } from '../site.ts';

describe('the order of work as told', () => {
  it('has the strength that chiefs told and the time at which a late load is expected', () => {
    const given = site();
    given.send('tell-strength', { crew: 'right', fit: 5 }, { by: dale, at: 3 });
    given.send('tell-load-late', { load: 'truck', minutes: 12, why: 'mud' }, { at: 4 });
    const { crews, loads } = workAsTold(given.state);
    expect(crews.map(({ id, people }) => [id, people])).toEqual([
      ['left', 7],
      ['right', 5],
      ['medic', 1],
    ]);
    expect(loads[0]?.arrives).toBe(22);
  });

  it('keeps only the changes of strength that are planned for after one that was told', () => {
    const given = site();
    given.send('tell-strength', { crew: 'right', fit: 5 }, { by: dale, at: 30 });
    const strength = [
      { from: 20, people: 8 },
      { from: 60, people: 6 },
    ];
    const crews = given.state.work.crews.map((crew) => ({ ...crew, strength }));
    const told = workAsTold({ ...given.state, work: { ...given.state.work, crews } });
    expect(told.crews[0]).toMatchObject({ people: 7, strength });
    expect(told.crews[1]).toMatchObject({ people: 5, strength: [{ from: 60, people: 6 }] });
  });

  it('has the nights at the site where the place is known, as slow as the doubt in force says', () => {
    const { state } = site();
    expect(workAsTold(state)).not.toHaveProperty('dark');
    const near = { latitude: 50, longitude: 10 };
    const placed = { ...state, ground: { ...ground, place: near } };
    const { dark } = workAsTold(placed);
    // At 50 degrees north there is a night in any 24 hours, whatever the date.
    expect(dark?.spells.length).toBeGreaterThanOrEqual(2);
    expect(dark?.factor).toBe(1.5);
    const doubt = doubtInForce(state);
    const unslowed = { ...placed, doubt: { ...doubt, light: { ...doubt.light, on: false } } };
    expect(workAsTold(unslowed).dark).toEqual({ spells: dark?.spells, factor: 1 });
  });

  it('leaves the order of work in force as it is', () => {
    const given = site();
    const before = given.state.work;
    workAsTold(given.state);
    expect(given.state.work).toBe(before);
  });
});

describe('changes to the order of work as told', () => {
  const hours = { kind: 'crew-hours', crew: 'right' } as const;

  it('leave a strength that was told, unless they name another', () => {
    const given = site();
    given.send('tell-strength', { crew: 'right', fit: 5 }, { by: dale, at: 30 });
    const right = (...changes: Change[]) => {
      const changed = changedAsTold(given.state, changes);
      return changed.ok ? changed.value.crews[1] : changed.reason;
    };
    const rests = [{ from: 60, to: 90 }];
    expect(right({ ...hours, rests })).toMatchObject({ people: 5, rests });
    expect(right({ ...hours, people: 6 })).toMatchObject({ people: 6 });
    const name = { name: 'Right', chief: null, attached: false };
    expect(right({ kind: 'crew-name', crew: 'right', ...name })).toMatchObject({ people: 5 });
  });

  it('say nothing of the time before a strength was told', () => {
    const given = site();
    given.send('tell-strength', { crew: 'right', fit: 5 }, { by: dale, at: 30 });
    const strength = [
      { from: 20, people: 8 },
      { from: 60, people: 6 },
    ];
    const changed = changedAsTold(given.state, [{ ...hours, strength }]);
    expect(changed.ok && changed.value.crews[1]).toMatchObject({
      people: 5,
      strength: [{ from: 60, people: 6 }],
    });
  });

  it('are not refused for people who were back from a rest or from another crew before fewer were told', () => {
    const given = site();
    const over: Change = {
      ...hours,
      lent: [{ crew: 'left', people: 4, from: 5, to: 10 }],
      rests: [
        { from: 10, to: 20, people: 5 },
        { from: 20, to: 25 },
      ],
    };
    given.send('tell-strength', { crew: 'right', fit: 3 }, { by: dale, at: 30 });
    const changed = changedAsTold(given.state, [over]);
    expect(changed.ok && changed.value.crews[1]).toMatchObject({
      people: 3,
      lent: [],
      rests: [{ from: 20, to: 25 }],
    });
  });

  it('that lend more than are fit are refused with their place', () => {
    const given = site();
    const lent = [{ crew: 'left', people: 6, from: 60, to: 90 }];
    expect(changedAsTold(given.state, [{ ...hours, lent }]).ok).toBe(true);
    given.send('tell-strength', { crew: 'right', fit: 5 }, { by: dale, at: 30 });
    const refused = changedAsTold(given.state, [{ ...hours, lent }]);
    expect(!refused.ok && refused.reason.map(({ path }) => path)).toEqual(['/crews/1/lent']);
  });
});

describe('the time asked for', () => {
  it('is in minutes after the start, and null when nobody asked', () => {
    const given = site();
    expect(minutesAskedFor(given.state)).toBe(330);
    given.send('set-asked-for', { askedFor: null });
    expect(minutesAskedFor(given.state)).toBeNull();
  });
});
