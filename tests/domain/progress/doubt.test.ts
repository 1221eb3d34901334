import { describe, expect, it } from 'vitest';
import { entrySentence } from '#client/words/entryWords.ts';
import type { Doubt } from '#domain/forecast/doubt/doubt.ts';
import type { DoubtEvent } from '#domain/forecast/doubt/events.ts';
import { sourcesOfDoubt } from '#domain/forecast/doubt/sources.ts';
import { usualDoubt } from '#domain/forecast/doubt/usualDoubt.ts';
import { fold } from '#domain/progress/evolve.ts';
import { doubtInForce } from '#domain/progress/views/doubtInForce.ts';
import { commander, log, site, siteWork, task } from './site.ts';

const usual = usualDoubt(siteWork);
const still: Doubt = { ...usual, day: { ...usual.day, on: false } };
const wetRope: Extract<DoubtEvent, { kind: 'jam' }> = {
  id: 'wet-rope',
  name: 'a rope slips',
  kind: 'jam',
  on: true,
  chance: 0.1,
  delay: { quick: 1, likely: 2, slow: 6 },
  tasks: ['lift'],
  source: 'the leader',
};

function withEvents(...events: Doubt['events']): { doubt: Doubt } {
  return { doubt: { ...usual, events } };
}

describe('the doubt of a build', () => {
  it('is the usual one of its work until the leader sets another', () => {
    const given = site();
    expect(given.state).not.toHaveProperty('doubt');
    expect(doubtInForce(given.state)).toEqual(usualDoubt(given.state.work));
    given.send('set-doubt', { doubt: still });
    expect(doubtInForce(given.state)).toEqual(still);
  });

  it('is in the record, whole', () => {
    const given = site();
    given.send('set-doubt', { doubt: still });
    const entry = given.entries.at(-1)!;
    expect(entry).toMatchObject({ kind: 'doubt-set', version: 1, body: { doubt: still } });
    expect(fold(given.entries)).toEqual(given.state);
    expect(entrySentence(given.state, entry)).toMatch(/^Doubt set: the tasks’ own minutes, each/);
  });

  it('is set by the leader alone', () => {
    const given = site();
    for (const by of [log, commander]) {
      expect(given.refusal('set-doubt', { doubt: still }, { by }).code).toBe('role-cannot');
    }
  });

  it('cannot name one event twice, nor a delay that falls', () => {
    const given = site();
    const falls = { ...wetRope, delay: { quick: 3, likely: 2, slow: 6 } };
    expect(given.refusal('set-doubt', withEvents(wetRope, wetRope)).code).toBe('form-wrong');
    expect(given.refusal('set-doubt', withEvents(falls)).code).toBe('form-wrong');
  });

  it('cannot be of tasks and loads that the build does not have', () => {
    const given = site();
    const noTask = { ...wetRope, tasks: ['mast'] };
    const noLoad = { ...wetRope, kind: 'late-load', tasks: undefined, loads: ['boat'] };
    const { tasks: _, ...late } = noLoad;
    expect(given.refusal('set-doubt', withEvents(noTask)).of).toEqual(['mast']);
    expect(given.refusal('set-doubt', withEvents(late as never)).code).toBe('load-unknown');
  });

  it('covers with its usual events what a new order of work brings, and leaves own events as they are', () => {
    const check = usual.events.find(({ id }) => id === 'hold-fails')!;
    const doubt = { ...usual, events: [{ ...check, chance: 0.3 }, wetRope] };
    const more = task({
      id: 'recheck',
      number: 90,
      hold: { measures: [], redo: [], lapsesAfter: [] } as never,
    });
    const work = { ...siteWork, tasks: [...siteWork.tasks, more] };
    const [holds, rope] = doubtInForce({ doubt, work }).events;
    expect(holds).toMatchObject({ chance: 0.3 });
    expect((holds as { tasks: string[] }).tasks).toContain('recheck');
    expect(rope).toEqual(wetRope);
  });

  it('says of each source what is assumed and where that comes from', () => {
    const said = sourcesOfDoubt({ ...usual, events: [wetRope] });
    expect(said.map(({ kind }) => kind)).toEqual(['own', 'day', 'crews', 'event', 'learning']);
    expect(said[3]).toEqual({
      kind: 'event',
      event: 'wet-rope',
      name: 'a rope slips',
      on: true,
      words: '10 % for each of 1 task; then 1 to 6 min, likely 2',
      source: 'the leader',
    });
    // exp(0.12) = 1.1275: the usual sigma of the day, one deviation up.
    expect(said[1]?.words).toContain('within 12.7 %');
  });

  it('credits work lights to nobody: the table of the manual has no figure for them', () => {
    expect(usual.light.source).toMatch(/with work lights: common practice, no source$/);
  });
});
