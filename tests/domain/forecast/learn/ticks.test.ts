import { describe, expect, it } from 'vitest';
import { type Tick, ticksOf } from '#domain/forecast/learn/ticks.ts';
import { trustOf } from '#domain/forecast/learn/trust.ts';
import { workedMinutes } from '#domain/forecast/learn/worked.ts';
import { lightClock } from '#domain/forecast/light/lightClock.ts';
import { clock, dale, hill, log, site } from '#tests/domain/progress/site.ts';

describe('the ticks of a build', () => {
  it('are tasks whose start was told, with the spells in which they stood', () => {
    const given = site();
    given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill, at: 2 });
    given.send('tell-stopped', { task: 'pegs', crew: 'left', why: 'rain' }, { by: hill, at: 5 });
    given.send('tell-resumed', { task: 'pegs', crew: 'left' }, { by: hill, at: 9 });
    given.send('tell-finished', { task: 'pegs', crew: 'left' }, { by: hill, at: 12 });
    given.send('tell-started', { task: 'panel-right', crew: 'right' }, { by: dale, at: 13 });
    expect(ticksOf(given.state, clock(20))).toEqual([
      { task: 'panel-right', crews: ['right'], start: 13, finish: null, stops: [] },
      { task: 'pegs', crews: ['left'], start: 2, finish: 12, stops: [{ from: 5, to: 9 }] },
    ]);
  });

  it('leave out a start that nobody told, a part told, and an inspection', () => {
    const given = site();
    given.send('tell-finished', { task: 'pegs', crew: 'left' }, { by: hill, at: 8 });
    given.send('tell-started', { task: 'unload', crew: 'right' }, { by: dale, at: 9 });
    given.send('tell-part', { task: 'unload', crew: 'right', part: 0.5 }, { by: dale, at: 10 });
    expect(ticksOf(given.state, clock(20))).toEqual([]);
    for (const id of ['panel-left', 'panel-right', 'lift']) given.finish(id, 20);
    given.pass('check', 40);
    const told = ticksOf(given.state, clock(50)).map(({ task }) => task);
    expect(told).toEqual(['lift', 'panel-left', 'panel-right']);
  });

  it('say how many were fit when a task began, where there are fewer now', () => {
    const given = site();
    given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill, at: 2 });
    given.send('tell-finished', { task: 'pegs', crew: 'left' }, { by: hill, at: 12 });
    const before = given.state.crews.left!.fit;
    given.send('tell-strength', { crew: 'left', fit: before - 2 }, { by: hill, at: 13 });
    const [pegs] = ticksOf(given.state, clock(20));
    expect(pegs).toMatchObject({ task: 'pegs', fit: { left: before } });
    given.send('tell-strength', { crew: 'left', fit: before }, { by: hill, at: 21 });
    expect(ticksOf(given.state, clock(22))[0]).not.toHaveProperty('fit');
  });

  it('are the same in whatever order the tells of one time arrive', () => {
    const tell = (given: ReturnType<typeof site>, task: string, by: typeof hill, start: number) => {
      const crew = by.crew!;
      given.send('tell-started', { task, crew }, { by, at: start });
      given.send('tell-finished', { task, crew }, { by, at: start + 6 });
    };
    const one = site();
    tell(one, 'panel-left', hill, 10);
    tell(one, 'panel-right', dale, 11);
    const other = site();
    tell(other, 'panel-right', dale, 11);
    tell(other, 'panel-left', hill, 10);
    expect(ticksOf(one.state, clock(30))).toEqual(ticksOf(other.state, clock(30)));
  });

  it('do not count a halt as work', () => {
    const given = site();
    given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill, at: 2 });
    given.send('halt', { why: '' }, { by: dale, at: 5 });
    expect(ticksOf(given.state, clock(7))).toEqual([]);
    for (const by of [hill, dale]) {
      given.send('acknowledge-halt', { crew: by.crew!, people: 7, of: 7 }, { by, at: 6 });
    }
    given.send('acknowledge-halt', { crew: 'medic', people: 1, of: 1 }, { by: log, at: 6 });
    given.send('lift-halt', { name: 'Lt Moor' }, { at: 9 });
    given.send('tell-resumed', { task: 'pegs', crew: 'left' }, { by: hill, at: 10 });
    given.send('tell-finished', { task: 'pegs', crew: 'left' }, { by: hill, at: 14 });
    expect(ticksOf(given.state, clock(20))).toMatchObject([
      { start: 2, finish: 14, stops: [{ from: 5, to: 10 }] },
    ]);
  });
});

const steady = lightClock([], 1);

describe('minutes at work', () => {
  it('are those between start and finish less the stops, by day and in the dark', () => {
    expect(workedMinutes(steady, 2, 12, [{ from: 5, to: 9 }])).toBe(6);
    expect(
      workedMinutes(steady, 2, 12, [
        { from: 0, to: 3 },
        { from: 11, to: 40 },
      ]),
    ).toBe(8);
    expect(workedMinutes(steady, 2, 12, [{ from: 20, to: 30 }])).toBe(10);
    expect(workedMinutes(steady, 2, 12, [{ from: 0, to: 30 }])).toBe(0);
    const night = lightClock([{ from: 6, to: 100 }], 2);
    expect(workedMinutes(night, 2, 12, [])).toBeCloseTo(7, 12);
  });
});

function tick(task: string, start: number, finish: number | null, crew = 'left'): Tick {
  return { task, crews: [crew], start, finish, stops: [] };
}

describe('how far ticks are trusted', () => {
  const four = () => 4;

  it('fully, one by one', () => {
    const trust = trustOf([tick('a', 0, 10), tick('b', 10, 15), tick('c', 15, 21)], four);
    expect([...trust.values()]).toEqual([1, 1, 1]);
  });

  it('little, where a crew ticks several jobs in one go: all of them less than one alone', () => {
    const ticks = [tick('a', 0, 10), tick('b', 10, 30), tick('c', 30, 30.5), tick('d', 30.5, 31)];
    const trust = trustOf(ticks, four);
    expect(trust.get('a')).toBe(1);
    const batch = ['b', 'c', 'd'].map((task) => trust.get(task)!);
    expect(batch).toEqual([1 / 9, 1 / 9, 1 / 9]);
    expect(batch.reduce((sum, each) => sum + each, 0)).toBeLessThan(1);
  });

  it('fully, where two jobs merely end together, or are that short', () => {
    const halves = trustOf([tick('a', 0, 10), tick('b', 4, 10.2)], four);
    expect([...halves.values()]).toEqual([1, 1]);
    const crews = trustOf([tick('a', 0, 10), tick('b', 9.5, 10.2, 'right')], four);
    expect(crews.get('a')).toBe(1);
    const short = trustOf([tick('a', 0, 10), tick('b', 10, 11)], () => 1);
    expect([...short.values()]).toEqual([1, 1]);
  });

  it('not at all yet while they are at work, and whatever their order', () => {
    const ticks = [tick('a', 0, 30), tick('b', 30, 30.5), tick('c', 0, null)];
    expect(trustOf(ticks, four).get('b')).toBe(1 / 4);
    expect(trustOf(ticks, four)).toEqual(trustOf(ticks.toReversed(), four));
    expect(trustOf(ticks, four).has('c')).toBe(false);
  });
});
