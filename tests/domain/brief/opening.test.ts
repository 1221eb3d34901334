import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openingAt, openingHeadline } from '#domain/brief/opening.ts';
import type { Forecast } from '#domain/forecast/forecast.ts';
import { simulate } from '#domain/forecast/simulate.ts';
import { freshTask } from '#domain/progress/standing.ts';
import { type BuildState, emptyBuild } from '#domain/progress/state.ts';
import { planOf, workOf } from '#tests/domain/forecast/smallNetwork.ts';

const work = workOf([{ id: 'open', minutes: [200, 300, 400] }]);
const plan = planOf(work);
const now = '2026-11-25T13:33:00.000Z';

const build: BuildState = {
  ...emptyBuild,
  start: '2026-11-25T11:30:00.000Z',
  askedFor: '2026-11-25T17:00:00.000Z',
  zone: 'UTC',
  confidence: 0.9,
  work,
  plan,
  tasks: { open: freshTask(work.tasks[0]!) },
};

/** A forecast whose opening with p per cent chance is `minutes(p)` after the start. */
function forecastOf(minutes: (percent: number) => number): Forecast {
  return {
    runs: 1000,
    seed: 1,
    shape: 'pert',
    mean: minutes(50),
    sd: 1,
    p10: minutes(10),
    p50: minutes(50),
    p80: minutes(80),
    p90: minutes(90),
    chanceBy: null,
    openings: Array.from({ length: 20 }, (_, k) => minutes(2.5 + 5 * k)),
    percentiles: Array.from({ length: 99 }, (_, k) => minutes(k + 1)),
    onChain: [],
  };
}

/** Even chance 280 minutes after the start (16:10), nine in ten 306 (16:36). */
const forecast = forecastOf((percent) => 280 + 0.65 * (percent - 50));

function doneAt(finishedAt: string): BuildState {
  return { ...build, tasks: { open: { ...build.tasks.open!, status: 'done', finishedAt } } };
}

describe('the opening in words', () => {
  it('says the chosen confidence first, then the even chance, then how it stands against the time asked for', () => {
    expect(openingHeadline(forecast, build, now)).toEqual({
      headline: 'Nine in ten by 16:36',
      even: 'Even chance by 16:10.',
      asked: 'Asked for 17:00: all 20 make it.',
    });
  });

  it('counts the openings that make the time asked for', () => {
    // Openings at 2.5, 7.5 ... 97.5 %: those to 47.5 % lie before the even chance.
    const asked = { ...build, askedFor: '2026-11-25T16:10:00.000Z' };
    expect(openingHeadline(forecast, asked, now).asked).toBe('Asked for 16:10: 10 of 20 make it.');
    const hopeless = { ...build, askedFor: '2026-11-25T14:00:00.000Z' };
    expect(openingHeadline(forecast, hopeless, now).asked).toBe(
      'Asked for 14:00: none of 20 makes it.',
    );
  });

  it('follows the confidence that the leader chose', () => {
    const surer = openingHeadline(forecast, { ...build, confidence: 0.8 }, now);
    expect(surer.headline).toBe('Eight in ten by 16:30');
    // 280 + 0.65 x 45 = 309.25 minutes, up to the next whole one.
    const surest = openingHeadline(forecast, { ...build, confidence: 0.95 }, now);
    expect(surest.headline).toBe('Nineteen in twenty by 16:40');
  });

  it('never lets the middle stand alone', () => {
    const even = openingHeadline(forecast, { ...build, confidence: 0.5 }, now);
    expect(even.headline).toBe('Even chance by 16:10');
    expect(even.even).toBe('Nine in ten by 16:36.');
  });

  it('says times of another day with the days between', () => {
    const late = forecastOf((percent) => 800 + percent);
    expect(openingHeadline(late, build, now).headline).toBe('Nine in ten by 02:20 +1 day');
  });

  it('speaks the time of the site', () => {
    const { headline } = openingHeadline(forecast, { ...build, zone: 'Europe/Stockholm' }, now);
    expect(headline).toBe('Nine in ten by 17:36');
  });

  it('says nothing of the time asked for when nobody asked', () => {
    expect(openingHeadline(forecast, { ...build, askedFor: null }, now).asked).toBeNull();
  });

  it('says since when it is open, and how that stands against the time asked for', () => {
    expect(openingHeadline(null, doneAt('2026-11-25T16:20:00.000Z'), now)).toEqual({
      headline: 'Open since 16:20',
      even: null,
      asked: 'Asked for 17:00: 40 min early.',
    });
    const late = openingHeadline(forecast, doneAt('2026-11-25T17:25:00.000Z'), now);
    expect(late.asked).toBe('Asked for 17:00: 25 min late.');
    const onTime = openingHeadline(forecast, doneAt('2026-11-25T17:00:00.000Z'), now);
    expect(onTime.asked).toBe('Asked for 17:00: on time.');
  });

  it('says what is missing when there is nothing to forecast', () => {
    expect(openingHeadline(null, { ...build, plan: null }, now)).toEqual({
      headline: 'No plan yet',
      even: null,
      asked: 'Asked for 17:00.',
    });
    expect(openingHeadline(null, build, now).headline).toBe('No forecast yet');
  });

  it('promises no minute earlier than the forecast', () => {
    fc.assert(
      fc.property(fc.integer(), fc.integer({ min: 50, max: 99 }), (seed, percent) => {
        const drawn = simulate(work, plan, {
          runs: 200,
          seed,
          shape: 'pert',
          askedFor: null,
        });
        const instant = openingAt(build, drawn, percent / 100);
        const exact = Date.parse(build.start) + drawn.percentiles[percent - 1]! * 60_000;
        expect(Date.parse(instant) % 60_000).toBe(0);
        expect(Date.parse(instant)).toBeGreaterThanOrEqual(exact - 1);
        expect(Date.parse(instant)).toBeLessThan(exact + 60_000);
      }),
      { numRuns: 30 },
    );
  });
});
