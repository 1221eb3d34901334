import { describe, expect, it } from 'vitest';
import type { CommandKind, tells } from '#domain/progress/command.ts';
import { decide } from '#domain/progress/decide.ts';
import { emptyBuild } from '#domain/progress/state.ts';
import {
  command,
  commander,
  dale,
  hill,
  inspector,
  leader,
  log,
  opening,
  Site,
  site,
  siteWork,
} from './site.ts';

const values = { level: 2, pins: true, wind: 4 };

/** A well-formed body of every tell, about the left crew. */
const bodies = {
  'tell-started': { task: 'pegs', crew: 'left' },
  'tell-finished': { task: 'pegs', crew: 'left' },
  'tell-stopped': { task: 'pegs', crew: 'left', why: '' },
  'tell-resumed': { task: 'pegs', crew: 'left' },
  'tell-part': { task: 'pegs', crew: 'left', part: 0.5 },
  'tell-strength': { crew: 'left', fit: 7 },
  'tell-off': { task: 'move', crew: 'left', off: 7, of: 7 },
  'tell-clear': { task: 'move', bank: 'near', name: 'Cpl Ash', people: 12 },
  'tell-load-in': { load: 'truck' },
  'tell-load-late': { load: 'truck', minutes: 12, why: '' },
  'tell-short': { part: 'pins', count: 2 },
  'tell-hurt': { crew: 'left', what: 'hand', outOfWork: true },
  'tell-near-miss': { what: 'panel slipped' },
  'tell-water': { rise: 0.04, level: null },
  'tell-wind': { speed: 5 },
  'tell-relief': { crew: 'left' },
  'fail-hold': { task: 'check', name: 'WO Finch', values, why: '' },
  halt: { why: '' },
  'acknowledge-halt': { crew: 'left', people: 7, of: 7 },
  withdraw: { entry: 3, why: '' },
} as const satisfies Record<keyof typeof tells, unknown>;

const kinds = Object.keys(bodies) as (keyof typeof bodies)[];

/** The tells that a role may send, each on a fresh site where the author has told one thing. */
function accepted(by: typeof leader): string[] {
  return kinds.filter((kind) => {
    const given = site();
    given.send('tell-water', { rise: 0, level: null }, { by: kind === 'withdraw' ? leader : hill });
    const refused = given.try(command(kind as CommandKind, bodies[kind] as never, { by }));
    return refused?.code !== 'role-cannot';
  });
}

describe('what a role may tell', () => {
  it('everything for the leader', () => {
    expect(accepted(leader)).toEqual(kinds);
  });

  it('everything but the failing of a hold for log keeper and chief', () => {
    const work = kinds.filter((kind) => kind !== 'fail-hold');
    expect(accepted(log)).toEqual(work);
    expect(accepted(hill)).toEqual(work);
  });

  it('findings, halts and near misses for the inspector', () => {
    expect(accepted(inspector)).toEqual(['tell-near-miss', 'fail-hold', 'halt', 'withdraw']);
  });

  it('nothing for the commander', () => {
    expect(accepted(commander)).toEqual([]);
  });
});

describe('a chief', () => {
  it('tells for the own crew only', () => {
    const given = site();
    for (const kind of kinds) {
      const body = bodies[kind];
      if (!('crew' in body)) continue;
      const sent = command(kind as CommandKind, body as never, { by: dale });
      expect([kind, given.try(sent)?.code]).toEqual([kind, 'not-your-crew']);
    }
  });
});

describe('the log keeper', () => {
  it('tells for any crew, and who said it is kept', () => {
    const given = site();
    const entry = given.send(
      'tell-finished',
      { task: 'pegs', crew: 'left' },
      { by: log, saidBy: 'Sgt Hill' },
    );
    expect(entry).toMatchObject({ by: log, saidBy: 'Sgt Hill' });
    expect(given.task('pegs').tells).toMatchObject([{ by: log, saidBy: 'Sgt Hill' }]);
  });

  it('never decides for the leader', () => {
    const given = site();
    const codes = [
      given.refusal('set-confidence', { confidence: 0.8 }, { by: log }).code,
      given.refusal('set-asked-for', { askedFor: null }, { by: log }).code,
      given.refusal('settle-task', { task: 'pegs', status: 'done' }, { by: log }).code,
    ];
    expect(new Set(codes)).toEqual(new Set(['role-cannot']));
  });
});

describe('names that a build does not have', () => {
  it('are refused, whoever sends them', () => {
    const given = site();
    expect(given.refusal('tell-started', { task: 'x', crew: 'left' }).code).toBe('task-unknown');
    expect(given.refusal('tell-started', { task: 'pegs', crew: 'x' }).code).toBe('crew-unknown');
    expect(given.refusal('tell-load-in', { load: 'x' }).code).toBe('load-unknown');
    expect(given.refusal('start-keep-off', { task: 'x' }).code).toBe('task-unknown');
  });

  it('are taken for crews where the order of work comes without any', () => {
    const given = new Site();
    given.take(opening({ ...siteWork, crews: [] }));
    given.send('tell-finished', { task: 'pegs', crew: 'anyone' });
    expect(given.task('pegs').status).toBe('done');
  });
});

describe('form', () => {
  it('is refused with times that do not parse', () => {
    const sent = command('tell-wind', { speed: 4 });
    for (const time of ['13:47', '2026-05-04 11:30', '2026-13-04T11:30:00Z', '']) {
      const refused = site().try({ ...sent, happenedAt: time });
      expect(refused).toMatchObject({ code: 'form-wrong', of: ['happenedAt'] });
    }
    const refused = site().refusal('set-asked-for', { askedFor: 'soon' });
    expect(refused).toMatchObject({ code: 'form-wrong', of: ['askedFor'] });
  });

  it('is refused with more people off than there are', () => {
    const given = site();
    const off = { task: 'move', crew: 'left', off: 8, of: 7 };
    expect(given.refusal('tell-off', off).code).toBe('form-wrong');
    const answer = { crew: 'left', people: 8, of: 7 };
    expect(given.refusal('acknowledge-halt', answer).code).toBe('form-wrong');
  });

  it('is refused with a clearance for a task that closes nothing', () => {
    const off = { task: 'pegs', crew: 'left', off: 7, of: 7 };
    expect(site().refusal('tell-off', off).code).toBe('not-keep-off');
  });
});

describe('a build that is not open', () => {
  it('takes nothing but its opening', () => {
    const refused = decide(emptyBuild, command('halt', { why: '' }));
    expect(refused).toMatchObject({ ok: false, reason: { code: 'build-unknown' } });
    expect(decide(emptyBuild, opening()).ok).toBe(true);
  });

  it('is opened once', () => {
    expect(site().try(opening())?.code).toBe('build-exists');
  });

  it('is opened only with a zone and times that exist', () => {
    const sent = opening();
    if (sent.kind !== 'open-build') throw new Error('not an opening');
    const open = (more: object) =>
      decide(emptyBuild, { ...sent, body: { ...sent.body, ...more } } as typeof sent);
    const wrong = { ok: false, reason: { code: 'form-wrong' } };
    expect(open({ zone: 'Europe/Nowhere' })).toMatchObject(wrong);
    expect(open({ start: 'at dawn' })).toMatchObject(wrong);
    expect(open({ askedFor: 'noon' })).toMatchObject(wrong);
  });
});
