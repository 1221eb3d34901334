import { describe, expect, it } from 'vitest';
import { holdsOf } from '#domain/progress/views/holds.ts';
import {
  beforeMove,
  clock,
  comesAfter,
  dale,
  hill,
  inspector,
  leader,
  log,
  need,
  site,
  siteWork,
  task,
} from './site.ts';

const good = { level: 2, pins: true, wind: 4 };
const pass = { task: 'check', name: 'WO Finch', values: good, remark: '' };

function readyForCheck() {
  const given = site();
  for (const id of ['pegs', 'panel-left', 'panel-right', 'lift']) given.finish(id);
  return given;
}

describe('passing a hold', () => {
  it('is the inspector’s, with name and values', () => {
    const given = readyForCheck();
    given.send('pass-hold', pass, { by: inspector, at: 20 });
    expect(given.task('check')).toMatchObject({
      status: 'done',
      hold: 'passed',
      passedBy: 'WO Finch',
      ownWork: false,
      values: good,
      finishedAt: clock(20),
    });
  });

  it('is refused to leader, log keeper and chief', () => {
    const given = readyForCheck();
    for (const by of [leader, log, hill])
      expect(given.refusal('pass-hold', pass, { by }).code).toBe('role-cannot');
  });

  it('is refused by a tick', () => {
    const given = readyForCheck();
    for (const by of [leader, log, hill]) {
      const refused = given.refusal('tell-finished', { task: 'check', crew: 'left' }, { by });
      expect(refused.code).toBe('hold-needs-inspection');
    }
  });

  it('is refused for a task that is no hold', () => {
    const refused = readyForCheck().refusal(
      'pass-hold',
      { ...pass, task: 'pegs' },
      { by: inspector },
    );
    expect(refused.code).toBe('not-a-hold');
  });

  it('is refused while a halt is on', () => {
    const given = readyForCheck();
    given.send('halt', { why: '' }, { by: dale });
    expect(given.refusal('pass-hold', pass, { by: inspector }).code).toBe('halt-on');
  });

  it('is refused while what comes before is not done, however far back', () => {
    const given = readyForCheck();
    given.send('reopen-task', { task: 'panel-left', why: 'pin missing', also: [] });
    expect(given.refusal('pass-hold', pass, { by: inspector })).toMatchObject({
      code: 'order-not-met',
      of: ['panel-left'],
    });
  });

  it('is refused while an earlier hold is open', () => {
    const work = {
      ...siteWork,
      tasks: [
        ...siteWork.tasks,
        task({ id: 'second', number: 10, needs: [], hold: siteWork.tasks[8]!.hold! }),
      ],
      links: [...siteWork.links, ...comesAfter('second', 'check')],
    };
    const given = site(work);
    const body = { task: 'second', name: 'WO Finch', values: {}, remark: '' };
    for (const id of ['pegs', 'panel-left', 'panel-right', 'lift']) given.finish(id);
    expect(given.refusal('pass-hold', body, { by: inspector })).toMatchObject({
      code: 'hold-open',
      of: ['check'],
    });
  });

  it('is refused while values are missing, naming them', () => {
    const refused = readyForCheck().refusal(
      'pass-hold',
      { ...pass, values: { level: 2 } },
      { by: inspector },
    );
    expect(refused).toEqual({
      code: 'values-missing',
      sentence: 'Enter all pins home and wind.',
      of: ['pins', 'wind'],
    });
  });

  it('is refused when a value lies outside its limit, naming value and limit', () => {
    const values = { level: 7, pins: false, wind: 4 };
    const refused = readyForCheck().refusal('pass-hold', { ...pass, values }, { by: inspector });
    expect(refused).toMatchObject({ code: 'value-outside-limit', of: ['level', 'pins'] });
    expect(refused.sentence).toContain(
      'difference of level is 7 mm, allowed is at least 0 mm and at most 5 mm; all pins home is not so',
    );
  });

  it('takes a value that lies on its limit', () => {
    const given = readyForCheck();
    const values = { level: 5, pins: true, wind: 9 };
    given.send('pass-hold', { ...pass, values }, { by: inspector });
    expect(given.task('check').hold).toBe('passed');
  });

  it('is refused twice', () => {
    const given = readyForCheck();
    given.send('pass-hold', pass, { by: inspector });
    expect(given.refusal('pass-hold', pass, { by: inspector }).code).toBe('hold-already-passed');
  });
});

describe('a value outside a hard limit', () => {
  const values = { level: 7, pins: true, wind: 4 };
  const concession = {
    name: 'Col Ansgar Reith',
    authority: 'Division engineer',
    reason: 'bearing plates take 8 mm',
  };

  it('passes by the concession of a named higher authority, which the record names with what it is about', () => {
    const given = readyForCheck();
    const entry = given.send('pass-hold', { ...pass, values, concession }, { by: inspector });
    expect(entry.consequence).toEqual({ beyond: ['level'] });
    expect(given.task('check')).toMatchObject({ hold: 'passed', status: 'done', values });
    expect(holdsOf(given.state).find((each) => each.task === 'check')?.concession).toEqual({
      ...concession,
      of: ['level'],
    });
  });

  it('is said among what happened on the site, with value, limit and reason', () => {
    const given = readyForCheck();
    given.send('pass-hold', { ...pass, values, concession }, { by: inspector });
    expect(given.state.events).toMatchObject([{ kind: 'conceded', task: 'check' }]);
    for (const part of ['Col Ansgar Reith, Division engineer', 'is 7 mm', 'at most 5 mm', '8 mm'])
      expect(given.state.events[0]?.sentence).toContain(part);
  });

  it.each(['name', 'authority', 'reason'] as const)(
    'is refused when the concession does not give its %s',
    (field) => {
      const blank = { ...concession, [field]: '  ' };
      const refused = readyForCheck().refusal(
        'pass-hold',
        { ...pass, values, concession: blank },
        { by: inspector },
      );
      expect(refused).toMatchObject({
        code: 'concession-incomplete',
        of: [`concession/${field}`],
      });
    },
  );

  it.each([
    ['the inspector', ' wo  FINCH'],
    ['a chief who builds here', 'Sgt Hill'],
  ])('is refused when it is %s who concedes it', (_, name) => {
    const refused = readyForCheck().refusal(
      'pass-hold',
      { ...pass, values, concession: { ...concession, name } },
      { by: inspector },
    );
    expect(refused.code).toBe('concession-not-higher');
  });

  it('is conceded by nobody for a thing that has to be seen and is not so', () => {
    const refused = readyForCheck().refusal(
      'pass-hold',
      { ...pass, values: { ...values, pins: false }, concession },
      { by: inspector },
    );
    expect(refused).toMatchObject({ code: 'value-outside-limit', of: ['level', 'pins'] });
  });

  it('still wants every other value', () => {
    const refused = readyForCheck().refusal(
      'pass-hold',
      { ...pass, values: { level: 7, pins: true }, concession },
      { by: inspector },
    );
    expect(refused).toMatchObject({ code: 'values-missing', of: ['wind'] });
  });

  it('is told how it could be conceded when nobody did', () => {
    const refused = readyForCheck().refusal('pass-hold', { ...pass, values }, { by: inspector });
    expect(refused.sentence).toContain('concession of a named higher authority');
  });

  it('wants its concession anew after the pass lapsed', () => {
    const given = readyForCheck();
    given.send('pass-hold', { ...pass, values, concession }, { by: inspector });
    given.send('halt', { why: 'rope' }, { by: dale });
    expect(holdsOf(given.state).find((each) => each.task === 'check')?.concession).toBeNull();
    given.send('acknowledge-halt', { crew: 'left', people: 7, of: 7 }, { by: hill });
    given.send('acknowledge-halt', { crew: 'right', people: 7, of: 7 }, { by: dale });
    given.send('acknowledge-halt', { crew: 'medic', people: 1, of: 1 }, { by: leader });
    given.send('lift-halt', { name: 'Lt Moor' });
    expect(given.refusal('pass-hold', { ...pass, values }, { by: inspector }).code).toBe(
      'value-outside-limit',
    );
  });

  it('lets a pass stand in the wind that was conceded, and lapse above it', () => {
    const given = readyForCheck();
    const gusty = { ...good, wind: 11 };
    given.send('pass-hold', { ...pass, values: gusty, concession }, { by: inspector });
    given.send('tell-wind', { speed: 11 });
    expect(given.task('check').hold).toBe('passed');
    given.send('tell-wind', { speed: 11.5 });
    expect(given.task('check').hold).toBe('lapsed');
  });

  it('is a word too many where every value is inside its limit', () => {
    const refused = readyForCheck().refusal(
      'pass-hold',
      { ...pass, concession },
      { by: inspector },
    );
    expect(refused.code).toBe('concession-not-needed');
  });
});

describe('a value outside the range where it ought to lie', () => {
  const softWork = {
    ...siteWork,
    tasks: siteWork.tasks.map((each) =>
      each.id === 'check'
        ? {
            ...each,
            hold: {
              ...each.hold!,
              measures: [
                { key: 'level', name: 'level', unit: 'mm' as const, most: 5, soft: { most: 3 } },
                { key: 'sag', name: 'sag', unit: 'mm' as const, optional: true as const },
              ],
            },
          }
        : each,
    ),
  };
  function readySoft() {
    const given = site(softWork);
    for (const id of ['pegs', 'panel-left', 'panel-right', 'lift']) given.finish(id);
    return given;
  }

  it('is refused until the inspector says why it may stand', () => {
    for (const reason of [undefined, '', '  ']) {
      const body = { ...pass, values: { level: 4 }, ...(reason !== undefined && { reason }) };
      const refused = readySoft().refusal('pass-hold', body, { by: inspector });
      expect(refused).toMatchObject({ code: 'reason-missing', of: ['level'] });
      expect(refused.sentence).toContain('level is 4 mm, ought to be at most 3 mm');
    }
  });

  it('passes with name and reason, which stay with the pass', () => {
    const given = readySoft();
    const body = { ...pass, values: { level: 4 }, reason: 'shimmed next' };
    const entry = given.send('pass-hold', body, { by: inspector });
    expect(entry.consequence).toEqual({ outside: ['level'] });
    expect(holdsOf(given.state).find((each) => each.task === 'check')).toMatchObject({
      status: 'passed',
      passedBy: 'WO Finch',
      concession: null,
      allowed: { reason: 'shimmed next', of: ['level'] },
    });
    expect(given.state.events).toEqual([]);
  });

  it('on the end of the range lies inside it, and what may be left out may be left out', () => {
    const given = readySoft();
    const entry = given.send('pass-hold', { ...pass, values: { level: 3 } }, { by: inspector });
    expect(entry.consequence).toBeUndefined();
  });

  it('beyond the hard limit is no matter of a reason', () => {
    const body = { ...pass, values: { level: 6 }, reason: 'in a hurry' };
    expect(readySoft().refusal('pass-hold', body, { by: inspector }).code).toBe(
      'value-outside-limit',
    );
  });
});

describe('builder and inspector being one person', () => {
  it('shows when the inspector told work on what the hold looks at', () => {
    const given = readyForCheck();
    const entry = given.send(
      'pass-hold',
      { ...pass, name: ' sgt  HILL ' },
      { by: { ...inspector, name: 'Sgt Hill' } },
    );
    expect(entry.consequence?.ownWork).toBe(true);
    expect(given.task('check').ownWork).toBe(true);
  });

  it('shows when the inspector leads a crew that worked, though the log keeper entered it', () => {
    const given = site();
    for (const id of ['pegs', 'panel-left', 'panel-right'] as const) given.finish(id);
    for (const crew of ['left', 'right'])
      given.send('tell-finished', { task: 'lift', crew }, { by: log, saidBy: 'Pte Wren' });
    given.send('pass-hold', { ...pass, name: 'Sgt Dale' }, { by: inspector });
    expect(given.task('check').ownWork).toBe(true);
  });

  it('does not show for a log keeper who only entered what others said', () => {
    const given = site();
    for (const id of ['pegs', 'panel-left', 'panel-right'] as const) given.finish(id);
    for (const crew of ['left', 'right'])
      given.send('tell-finished', { task: 'lift', crew }, { by: log, saidBy: 'Pte Wren' });
    given.send('pass-hold', { ...pass, name: 'Cpl Reed' }, { by: inspector });
    expect(given.task('check').ownWork).toBe(false);
  });
});

describe('failing a hold', () => {
  const fail = {
    task: 'check',
    name: 'WO Finch',
    values: { level: 9, pins: true, wind: 4 },
    why: 'left side low',
  };

  it('brings its redo list back as the next attempt and keeps the values', () => {
    const given = readyForCheck();
    const entry = given.send('fail-hold', fail, { by: inspector, at: 20 });
    expect(entry.consequence?.redo).toEqual([{ task: 'lift', attempt: 2 }]);
    expect(given.task('check')).toMatchObject({
      status: 'to-come',
      hold: 'failed',
      failures: 1,
      why: 'left side low',
      values: fail.values,
    });
    expect(given.task('lift')).toMatchObject({ status: 'to-come', attempt: 2, tells: [] });
    expect(given.task('lift').earlier).toMatchObject([{ attempt: 1, finishedAt: clock(5) }]);
    expect(given.state.events).toMatchObject([{ kind: 'hold-failed', task: 'check' }]);
  });

  it('makes a plan made before stale', () => {
    const given = readyForCheck();
    const entry = given.send('fail-hold', fail, { by: inspector });
    expect(given.state.workNumber).toBe(entry.number);
  });

  it('can be passed once the redo is done', () => {
    const given = readyForCheck();
    given.send('fail-hold', fail, { by: inspector });
    expect(given.refusal('pass-hold', pass, { by: inspector }).code).toBe('order-not-met');
    given.finish('lift', 25);
    given.send('pass-hold', pass, { by: inspector, at: 35 });
    expect(given.task('check')).toMatchObject({ hold: 'passed', failures: 1, attempt: 2 });
  });

  it('is a fact also about a hold that was passed', () => {
    const given = beforeMove();
    given.send('fail-hold', fail, { by: inspector, at: 30 });
    expect(given.task('check')).toMatchObject({ hold: 'failed', status: 'to-come' });
  });

  it('flags what was started on the strength of an earlier pass, until it is passed again', () => {
    const given = beforeMove();
    given.clear(25);
    given.send('start-keep-off', { task: 'move' }, { at: 26 });
    const entry = given.send('fail-hold', fail, { by: inspector, at: 27 });
    expect(entry.consequence?.flagged).toEqual(['move']);
    given.finish('lift', 30);
    expect(given.task('move').flagged).toBe(true);
    given.pass('check', 40);
    expect(given.task('move')).toMatchObject({ status: 'at-work', flagged: false });
  });

  it('may be told by the leader, and not by log keeper or chief', () => {
    const given = readyForCheck();
    expect(given.refusal('fail-hold', fail, { by: log }).code).toBe('role-cannot');
    expect(given.refusal('fail-hold', fail, { by: hill }).code).toBe('role-cannot');
    given.send('fail-hold', fail, { by: leader });
    expect(given.task('check').hold).toBe('failed');
  });

  it('leaves the redo standing when it is withdrawn after the redo began', () => {
    const given = readyForCheck();
    const entry = given.send('fail-hold', fail, { by: inspector, at: 20 });
    given.send('tell-started', { task: 'lift', crew: 'left' }, { by: hill, at: 21 });
    given.send('withdraw', { entry: entry.number, why: '' }, { by: inspector, at: 22 });
    expect(given.task('check')).toMatchObject({ hold: 'open', failures: 0 });
    expect(given.task('lift')).toMatchObject({ status: 'at-work', attempt: 2 });
  });

  it('is undone when it is withdrawn before the redo began', () => {
    const given = readyForCheck();
    const lift = given.task('lift');
    const entry = given.send('fail-hold', fail, { by: inspector });
    given.send('withdraw', { entry: entry.number, why: 'wrong hold' }, { by: inspector });
    expect(given.task('lift')).toEqual(lift);
    expect(given.task('check')).toMatchObject({ hold: 'open', failures: 0 });
    expect(given.state.events).toEqual([]);
  });
});

describe('a pass', () => {
  it('lapses in wind above the limit of the hold, and only above it', () => {
    const given = beforeMove();
    given.send('tell-wind', { speed: 9 });
    expect(given.task('check').hold).toBe('passed');
    given.send('tell-wind', { speed: 9.5 });
    expect(given.task('check')).toMatchObject({
      hold: 'lapsed',
      status: 'to-come',
      why: 'wind of 9.5 m/s',
      passedBy: null,
    });
  });

  it('lapses above 12 m/s where the hold measures no wind (common practice, no source)', () => {
    const [check] = siteWork.tasks.filter(({ id }) => id === 'check');
    const hold = { ...check!.hold!, measures: [] };
    const given = site({
      ...siteWork,
      tasks: siteWork.tasks.map((each) => (each.id === 'check' ? { ...each, hold } : each)),
    });
    for (const id of ['pegs', 'panel-left', 'panel-right', 'lift']) given.finish(id);
    given.send('pass-hold', { ...pass, values: {} }, { by: inspector });
    given.send('tell-wind', { speed: 12 });
    expect(given.task('check').hold).toBe('passed');
    given.send('tell-wind', { speed: 12.1 });
    expect(given.task('check').hold).toBe('lapsed');
  });

  it('lapses when a crew that works under it is relieved, and not when another is', () => {
    const given = beforeMove();
    given.send('tell-relief', { crew: 'right' }, { by: dale });
    expect(given.task('check').hold).toBe('passed');
    given.send('tell-relief', { crew: 'left' }, { by: hill });
    expect(given.task('check').hold).toBe('lapsed');
  });

  it('lapses on a halt', () => {
    const given = beforeMove();
    const entry = given.send('halt', { why: 'rope' }, { by: dale });
    expect(entry.consequence).toEqual({ lapsed: ['check'] });
    expect(given.task('check').hold).toBe('lapsed');
  });

  it('is spent, and stays, once what it guards is done', () => {
    const given = beforeMove();
    given.clear(25);
    given.send('start-keep-off', { task: 'move' }, { at: 26 });
    given.send('tell-finished', { task: 'move', crew: 'left' }, { by: hill, at: 29 });
    given.send('tell-wind', { speed: 20 });
    given.send('halt', { why: '' });
    expect(given.task('check').hold).toBe('passed');
  });

  it('does not lapse by the very move it was given for', () => {
    const given = beforeMove();
    given.clear(25);
    const entry = given.send('start-keep-off', { task: 'move' }, { at: 26 });
    expect(entry.consequence).toBeUndefined();
  });

  it('lapses by another move while it still guards work', () => {
    const work = {
      ...siteWork,
      tasks: [
        ...siteWork.tasks,
        task({
          id: 'inch',
          number: 10,
          name: 'Inch back',
          needs: [need('right', 4)],
          effect: { kind: 'move', stage: 2, metres: -0.5, lands: false },
        }),
      ],
    };
    const given = site(work);
    for (const id of ['pegs', 'panel-left', 'panel-right', 'lift']) given.finish(id);
    given.pass('check');
    given.send('tell-finished', { task: 'inch', crew: 'right' }, { by: dale, at: 22 });
    expect(given.task('check')).toMatchObject({ hold: 'lapsed', why: 'after Inch back (10)' });
  });

  it('lapses by a jacking keep-off task that finishes, not by its start', () => {
    const check = siteWork.tasks.find(({ id }) => id === 'check')!;
    const work = {
      ...siteWork,
      tasks: [
        ...siteWork.tasks.map((each) =>
          each.id === 'check'
            ? { ...check, hold: { ...check.hold!, lapsesOn: ['jack' as const] } }
            : each,
        ),
        task({
          id: 'jack',
          number: 10,
          needs: [need('right', 4)],
          keepOff: true,
          place: { part: 'jack', bank: 'far' },
        }),
      ],
    };
    const given = site(work);
    for (const id of ['pegs', 'panel-left', 'panel-right', 'lift']) given.finish(id);
    given.pass('check');
    given.send('tell-started', { task: 'jack', crew: 'right' }, { by: dale, at: 22 });
    expect(given.task('check').hold).toBe('passed');
    given.send('tell-finished', { task: 'jack', crew: 'right' }, { by: dale, at: 24 });
    expect(given.task('check').hold).toBe('lapsed');
  });

  it('guards past a small job between it and the move', () => {
    const work = {
      ...siteWork,
      tasks: [...siteWork.tasks, task({ id: 'ready', number: 10, name: 'Ready to move' })],
      links: [
        ...siteWork.links.filter(({ to }) => to !== 'move'),
        ...comesAfter('ready', 'check'),
        ...comesAfter('move', 'ready'),
      ],
    };
    const given = site(work);
    for (const id of ['pegs', 'panel-left', 'panel-right', 'lift']) given.finish(id);
    given.pass('check');
    given.finish('ready');
    given.send('tell-wind', { speed: 15 });
    expect(given.task('check').hold).toBe('lapsed');
    given.clear(30);
    expect(given.refusal('start-keep-off', { task: 'move' }, { at: 31 }).code).toBe('hold-open');
  });

  it('can be given again after it lapsed', () => {
    const given = beforeMove();
    given.send('tell-wind', { speed: 15 });
    given.send('tell-wind', { speed: 5 });
    expect(given.task('check').hold).toBe('lapsed');
    given.pass('check', 40);
    expect(given.task('check')).toMatchObject({
      hold: 'passed',
      attempt: 2,
      finishedAt: clock(40),
    });
  });

  it('is good again when the reading that made it lapse is withdrawn', () => {
    const given = beforeMove();
    const before = given.task('check');
    const entry = given.send('tell-wind', { speed: 15 }, { by: dale });
    given.send('withdraw', { entry: entry.number, why: 'misread' }, { by: dale });
    expect(given.task('check')).toEqual(before);
    expect(given.state.wind.speed).toBeNull();
  });
});
