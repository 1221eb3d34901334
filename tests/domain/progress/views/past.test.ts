import { describe, expect, it } from 'vitest';
import { pastOf } from '#domain/progress/views/past.ts';
import { clock, dale, hill, inspector, site } from '../site.ts';

describe('the past of a build', () => {
  it('is minutes after the start: done with start and finish, at work and stopped with start and part', () => {
    const given = site();
    given.finish('pegs', 2);
    given.send('tell-started', { task: 'panel-left', crew: 'left' }, { by: hill, at: 8 });
    given.send('tell-started', { task: 'unload', crew: 'right' }, { by: dale, at: 9 });
    given.send('tell-part', { task: 'unload', crew: 'right', part: 0.5 }, { by: dale, at: 10 });
    given.send(
      'tell-stopped',
      { task: 'unload', crew: 'right', why: 'rain' },
      { by: dale, at: 11 },
    );
    expect(pastOf(given.state, clock(12))).toEqual({
      now: 12,
      tasks: [
        {
          task: 'pegs',
          status: 'done',
          start: 2,
          finish: 7,
          crews: [{ crew: 'left', people: 6 }],
        },
        { task: 'panel-left', status: 'at-work', start: 8, crews: [{ crew: 'left', people: 6 }] },
        {
          task: 'unload',
          status: 'stopped',
          start: 9,
          part: 0.5,
          crews: [{ crew: 'right', people: 3 }],
        },
      ],
    });
  });

  it('gives a task told done without a start its expected minutes', () => {
    const given = site();
    given.send('tell-finished', { task: 'pegs', crew: 'left' }, { by: hill, at: 20 });
    // (4 + 4 x 5 + 12) / 6 = 6 minutes.
    expect(pastOf(given.state, clock(21)).tasks).toMatchObject([{ start: 14, finish: 20 }]);
  });

  it('leaves out what comes back, and holds that do not count', () => {
    const given = site();
    for (const id of ['pegs', 'panel-left', 'panel-right', 'lift']) given.finish(id, 0);
    given.pass('check', 10);
    expect(pastOf(given.state, clock(11)).tasks.map(({ task }) => task)).toContain('check');
    given.send(
      'fail-hold',
      { task: 'check', name: 'WO Finch', values: {}, why: 'low' },
      { by: inspector, at: 12 },
    );
    expect(pastOf(given.state, clock(13)).tasks.map(({ task }) => task)).toEqual([
      'pegs',
      'panel-left',
      'panel-right',
    ]);
  });

  it('names the crew that took a task in place of the planned one', () => {
    const given = site();
    given.send('tell-finished', { task: 'pegs', crew: 'right' }, { by: dale, at: 6 });
    const [pegs] = pastOf(given.state, clock(7)).tasks;
    expect(pegs?.crews.map(({ crew }) => crew)).toEqual(['right']);
  });
});
