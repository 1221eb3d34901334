import fc from 'fast-check';
import Value from 'typebox/value';
import { describe, expect, it } from 'vitest';
import { readLine } from '#client/screens/log/readLine.ts';
import { wireBodies } from '#shared/wireBodies.ts';
import { state as larchFord, now as larchNow } from '../fixtures/larchFord.ts';
import { smallNow, standingSo } from '../support/smallBuild.ts';

const atWork = standingSo('bay-9-left', {
  status: 'at-work',
  startedAt: '2026-11-25T12:28:00Z',
  shares: [
    {
      crew: 'left',
      status: 'at-work',
      startedAt: '2026-11-25T12:28:00Z',
      finishedAt: null,
      why: null,
      part: 0,
    },
  ],
});
const halted = {
  ...atWork,
  halt: {
    entry: 231,
    by: { role: 'chief' as const, name: 'R' },
    why: '',
    at: '2026-11-25T12:30:00Z',
    since: '2026-11-25T12:30:00Z',
    acknowledged: {},
  },
};

const you = { role: 'log' as const, name: 'Log keeper' };
const read = (line: string, state = atWork) => readLine(line, { state, now: smallNow, you });
const first = (line: string, state = atWork) => read(line, state)[0];

describe('a line from the radio', () => {
  for (const [line, kind, body] of [
    ['left 57 done', 'tell-finished', { task: 'bay-9-left', crew: 'left' }],
    ['l 57 d', 'tell-finished', { task: 'bay-9-left', crew: 'left' }],
    ['57 done', 'tell-finished', { task: 'bay-9-left', crew: 'left' }],
    ['57 left done', 'tell-finished', { task: 'bay-9-left', crew: 'left' }],
    ['left done 57', 'tell-finished', { task: 'bay-9-left', crew: 'left' }],
    ['left girder 57 done', 'tell-finished', { task: 'bay-9-left', crew: 'left' }],
    ['left done', 'tell-finished', { task: 'bay-9-left', crew: 'left' }],
    ['60 started', 'tell-started', { task: 'bay-9-right', crew: 'right' }],
    ['57 half', 'tell-part', { task: 'bay-9-left', crew: 'left', part: 0.5 }],
    ['57 60%', 'tell-part', { task: 'bay-9-left', crew: 'left', part: 0.6 }],
    [
      'left 57 stopped pin jammed by frost',
      'tell-stopped',
      { task: 'bay-9-left', crew: 'left', why: 'pin jammed by frost' },
    ],
    ['left 6 fit', 'tell-strength', { crew: 'left', fit: 6 }],
    ['left strength 6', 'tell-strength', { crew: 'left', fit: 6 }],
    ['left off 7/7', 'tell-off', { task: 'move-5', crew: 'left', off: 7, of: 7 }],
    ['left off 6 of 7', 'tell-off', { task: 'move-5', crew: 'left', off: 6, of: 7 }],
    ['left off 7/7 71', 'tell-off', { task: 'move-5', crew: 'left', off: 7, of: 7 }],
    ['left off seven of seven', 'tell-off', { task: 'move-5', crew: 'left', off: 7, of: 7 }],
    ['done left 57', 'tell-finished', { task: 'bay-9-left', crew: 'left' }],
    ['57 done left', 'tell-finished', { task: 'bay-9-left', crew: 'left' }],
    ['left girder, bay 9 done, 13:28', 'tell-finished', { task: 'bay-9-left', crew: 'left' }],
    ['bay 9 left done', 'tell-finished', { task: 'bay-9-left', crew: 'left' }],
    ['left go on', 'tell-resumed', { task: 'bay-9-left', crew: 'left' }],
    [
      'near bank clear Ames 18',
      'tell-clear',
      { task: 'move-5', bank: 'near', name: 'Ames', people: 18 },
    ],
    [
      'far bank seen clear Stroud 4',
      'tell-clear',
      { task: 'move-5', bank: 'far', name: 'Stroud', people: 4 },
    ],
    [
      'left one hurt hand crushed',
      'tell-hurt',
      { crew: 'left', what: 'hand crushed', outOfWork: false },
    ],
    ['left short 8 pins', 'tell-short', { part: 'pins', count: 8 }],
    ['truck 2 here', 'tell-load-in', { load: 'truck-5' }],
    ['water falling 3', 'tell-water', { rise: -0.03, level: null }],
    ['stop', 'halt', { why: '' }],
    ['stop, stop, stop', 'halt', { why: '' }],
    [
      'clear near Ames 18',
      'tell-clear',
      { task: 'move-5', bank: 'near', name: 'Ames', people: 18 },
    ],
    ['load 2 in', 'tell-load-in', { load: 'truck-5' }],
    [
      'truck deck late 12 bogged',
      'tell-load-late',
      { load: 'truck-5', minutes: 12, why: 'bogged' },
    ],
    [
      'left hurt hand crushed',
      'tell-hurt',
      { crew: 'left', what: 'hand crushed', outOfWork: false },
    ],
    ['left hurt out hand', 'tell-hurt', { crew: 'left', what: 'hand', outOfWork: true }],
    ['short 8 pins for 57', 'tell-short', { part: 'pins', count: 8, task: 'bay-9-left' }],
    ['near miss panel slipped', 'tell-near-miss', { what: 'panel slipped' }],
    ['water 4', 'tell-water', { rise: 0.04, level: null }],
    ['water -2 level 1.35', 'tell-water', { rise: -0.02, level: 1.35 }],
    ['wind 9', 'tell-wind', { speed: 9 }],
    ['left relief', 'tell-relief', { crew: 'left' }],
    ['halt rope parted', 'halt', { why: 'rope parted' }],
    ['undo 230 wrong bay', 'withdraw', { entry: 230, why: 'wrong bay' }],
  ] as const) {
    it(`“${line}” means ${kind}`, () => {
      expect(first(line)?.meant).toEqual({ kind, body });
    });
  }

  it('says when it happened by the clock of the site', () => {
    for (const line of ['left 57 done 13:28', 'left 57 done 1328', 'left 57 done 5 ago']) {
      expect(first(line)?.at).toBe(Date.parse('2026-11-25T12:28:00Z'));
      expect(first(line)?.meant?.kind).toBe('tell-finished');
    }
  });

  it('sends no time of day that is still to come or before the build, but takes a watch slightly ahead as now', () => {
    expect(first('left 57 done 23:50')).toMatchObject({ meant: null });
    expect(first('left 57 done 23:50')?.sentence).toContain('ask for the time again');
    const overnight = { ...atWork, start: '2026-11-24T20:00:00Z' };
    expect(first('left 57 done 23:50', overnight)?.at).toBe(Date.parse('2026-11-24T22:50:00Z'));
    expect(first('left 57 done 13:36')?.at).toBe(smallNow);
  });

  it('says so when work was told done before it was told started', () => {
    expect(first('left 57 done 13:00')?.warning).toContain('told started at 13:28');
  });

  it('says so when work that was told done is told started again', () => {
    const finishedAt = '2026-11-25T12:30:00Z';
    const ended = standingSo('bay-9-left', {
      status: 'done',
      finishedAt,
      shares: [{ crew: 'left', status: 'done', startedAt: null, finishedAt, why: null, part: 1 }],
    });
    expect(first('left 57 started', ended)?.warning).toContain('told done at 13:30');
    expect(first('left 57 done', ended)?.warning).toBeNull();
  });

  it('names the crew’s chief as the speaker unless the line names another', () => {
    expect(first('left 57 done')?.by).toBe('Cpl Okoro');
    expect(first('left 57 stopped jammed, by Pte Hill 13:28')).toMatchObject({
      by: 'Pte Hill',
      at: Date.parse('2026-11-25T12:28:00Z'),
      meant: { body: { why: 'jammed' } },
    });
    expect(first('left 57 done by Pte Hill')).toMatchObject({ by: 'Pte Hill', guess: false });
    expect(first('60 started')?.by).toBeNull();
  });

  it('never offers to pass a hold point, and says whose it is', () => {
    const [only, ...others] = read('70 done');
    expect(only).toMatchObject({ meant: null });
    expect(only?.sentence).toContain('only the inspector');
    expect(others.every(({ meant }) => meant?.kind !== 'tell-finished')).toBe(true);
  });

  it('says the same where the hold is passed or failed by its name', () => {
    for (const line of ['ready for move 5 passed', 'rollers ready for move 5 failed']) {
      const [only] = read(line);
      expect(only, line).toMatchObject({ meant: null });
      expect(only?.sentence).toContain('Ready for move 5 (70) is a hold point: only the inspector');
    }
  });

  it('offers both crews when the letters mean either', () => {
    const crews = read('r 60 started').map(({ sentence }) => sentence.split(' started')[0]);
    expect(crews).toEqual(expect.arrayContaining(['Right girder', 'Rollers and jacks']));
    expect(crews[0]).toBe('Right girder');
  });

  it('offers what is likely next when only a crew is named, as guesses that break no rule', () => {
    const offered = read('left');
    expect(offered[0]?.meant).toMatchObject({
      kind: 'tell-finished',
      body: { task: 'bay-9-left' },
    });
    expect(offered.every(({ guess, warning }) => guess && warning === null)).toBe(true);
    // Bay 10 comes after bay 9, which is at work.
    const tasks = offered.map(({ meant }) => meant && 'task' in meant.body && meant.body.task);
    expect(tasks).not.toContain('bay-10-left');
  });

  it('that says what happened is no guess, and says which rule it would break', () => {
    expect(first('58 started')).toMatchObject({ guess: false, meant: { kind: 'tell-started' } });
    expect(first('58 started')?.warning).toContain('Finish Bay 9, left side (57) first');
    expect(first('57 done')?.warning).toBeNull();
    expect(first('right 57 done')?.warning).toBe('Not this crew’s task by plan.');
  });

  it('asks for a keep-off task, and only then offers that it was told started all the same', () => {
    expect(read('71 started').map(({ meant }) => meant?.kind)).toEqual([
      'start-keep-off',
      'tell-started',
    ]);
    expect(read('71 started')[1]?.warning).toContain('without being asked for');
  });

  it('lets Enter alone send nothing that was not said', () => {
    // A count, a crew, a task, a load or an arrival that nobody named; words that were not understood.
    const unsaid = ['left off', 'r 5 fit', 'load 2', 'load deck', 'left 57 doen', 'bay 9 done'];
    for (const line of [...unsaid, 'left 57 done and 58 started', 'l', 's', '57', '']) {
      const best = first(line);
      expect(best?.guess === false && best.meant !== null, line).toBe(false);
    }
    expect(first('left down', halted)?.guess).toBe(true);
    // Letters on the way to a word that calls everybody to a stop, or takes something back, are not that word.
    for (const line of ['h', 'hal', 'u', 'und', 'm'])
      expect(read(line).every(({ guess, meant }) => guess || meant === null)).toBe(true);
    for (const line of ['load in', 'truck late 12'])
      expect(read(line).filter(({ guess, meant }) => !guess && meant).length).toBeLessThan(2);
  });

  it('says which number there is no task for', () => {
    for (const line of ['999 done', 'left 999 done', 'done 999']) {
      expect(first(line)).toMatchObject({ meant: null });
      expect(first(line)?.sentence).toContain('no task 999');
    }
  });

  it('lists the crews that have not told off, or not answered a halt, one to be chosen after the other', () => {
    const off = readLine('off', { state: larchFord, now: larchNow, you });
    expect(off.map(({ meant }) => meant?.kind)).toEqual(off.map(() => 'tell-off'));
    expect(off.length).toBeGreaterThan(1);
    expect(off.every(({ guess }) => guess)).toBe(true);
    const down = read('all down', halted);
    expect(down.map(({ meant }) => meant?.kind)).toEqual(down.map(() => 'acknowledge-halt'));
    expect(first('down')).toMatchObject({ meant: null });
  });

  it('left empty offers what is under way first', () => {
    expect(first('')?.meant).toMatchObject({ kind: 'tell-finished', body: { task: 'bay-9-left' } });
  });

  it('takes a count of people as loads down and clear while a halt is on', () => {
    expect(first('left 7/7', halted)?.meant).toEqual({
      kind: 'acknowledge-halt',
      body: { crew: 'left', people: 7, of: 7 },
    });
    expect(first('left 7/7')?.meant?.kind).toBe('tell-off');
    expect(first('left down')?.meant).toBeNull();
  });

  it('takes back the last report of this link, and nobody else’s', () => {
    const tell = (entry: number, name: string) => ({
      entry,
      kind: 'task-finished',
      by: { role: 'log' as const, name },
      saidBy: null,
      receivedAt: '2026-11-25T12:30:00Z',
      body: {},
    });
    const told = { ...atWork, tells: [tell(228, 'Log keeper'), tell(229, 'Other laptop')] };
    expect(first('undo', told)?.meant).toMatchObject({ kind: 'withdraw', body: { entry: 228 } });
    expect(first('undo', { ...told, withdrawn: [228] })).toMatchObject({ meant: null });
  });

  it('says what a half-said line lacks instead of sending it', () => {
    for (const line of ['clear near', 'clear near Ames', 'short', 'short pins']) {
      expect(first(line)).toMatchObject({ meant: null });
      expect(first(line)?.sentence).not.toBe('');
    }
  });

  it('takes no number that nobody can mean, and a time for no count', () => {
    for (const line of [
      'near clear Ames 1328',
      'short 800 pins',
      'water 600',
      'wind 99.5',
      'left 900 fit',
      'load 5 late 4000',
    ])
      expect(
        read(line).filter(({ meant }) => meant !== null),
        line,
      ).toEqual([]);
    expect(first('load 5 late 600 bogged')?.meant).toMatchObject({ body: { minutes: 600 } });
    expect(first('short eight pins')?.meant).toMatchObject({ body: { part: 'pins', count: 8 } });
    expect(first('clear near Ames 18 for 71')?.meant).toMatchObject({ body: { people: 18 } });
  });

  it('whatever is typed, sends only what the wire takes and never passes or fails a hold', () => {
    const word = fc.constantFrom(
      ...'left right rollers 57 58 60 70 71 done started stopped half 60% off 7/7 of 7 fit down hurt out clear near far Ames load 1 in late 12 short pins for water -4 800 level 1.2 wind 90 halt undo 230 , by 13:28 1328 ago relief'.split(
        ' ',
      ),
    );
    fc.assert(
      fc.property(fc.array(word, { maxLength: 7 }), fc.boolean(), (line, halt) => {
        for (const { meant, sentence } of read(line.join(' '), halt ? halted : atWork)) {
          expect(sentence).not.toBe('');
          if (!meant) continue;
          expect(['pass-hold', 'fail-hold']).not.toContain(meant.kind);
          expect(Value.Check(wireBodies[meant.kind], meant.body)).toBe(true);
        }
      }),
      { numRuns: 500 },
    );
  });
});

describe('a keep-off task', () => {
  it('is never offered unasked while anything is missing, and says what when asked for', () => {
    expect(read('').map(({ meant }) => meant?.kind)).not.toContain('start-keep-off');
    expect(read('71').map(({ meant }) => meant?.kind)).not.toContain('start-keep-off');
    expect(first('71 started')?.warning).toContain('Would be refused');
  });
});
