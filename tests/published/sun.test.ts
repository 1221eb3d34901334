import { describe, expect, it } from 'vitest';
import { type Light, lightOf, moonLit, moonSentence } from '#domain/brief/light.ts';

// Definitions: sunrise and sunset with the sun's centre 50' below the horizon, civil twilight 6
// degrees, nautical 12 (US Naval Observatory, quoted at rhodesmill.org/skyfield/almanac.html). Tables
// give whole minutes, so 60 seconds are allowed everywhere.
const golden = { latitude: 39.742476, longitude: -105.1786 };
const bluffton = { latitude: 40.8939, longitude: -83.8917 };
const london = { latitude: 51.5, longitude: -0.1333 };
const delhi = { latitude: 28.61, longitude: 77.22 };
const wayne = { latitude: 40.9, longitude: -74.3 };
const harra = { latitude: 67.4066, longitude: 20.0997 };
const tromso = { latitude: 69.6, longitude: 18.95 };

type Row = {
  place: { latitude: number; longitude: number };
  noon: string;
  expected: Partial<Record<keyof Light, string>>;
};

// biome-ignore format: one day of a table a line
const rows: (Row & { source: string })[] = [
  {
    // NREL/TP-560-34302 (Reda and Andreas), test output. Its sunset, 17:20:19, is computed for the UT
    // day and belongs to the evening before; that of the 17th is about 17:18:51 (recomputed).
    source: 'Golden, 17 October 2003', place: golden, noon: '2003-10-17T19:00:00Z',
    expected: { sunrise: '2003-10-17T13:12:43Z', sunset: '2003-10-18T00:18:51Z' },
  },
  {
    source: 'Golden, the evening before', place: golden, noon: '2003-10-16T19:00:00Z',
    expected: { sunset: '2003-10-17T00:20:19Z' },
  },
  {
    // US Naval Observatory one-day table, quoted in the tests of Skyfield.
    source: 'Bluffton, 12 September 2018', place: bluffton, noon: '2018-09-12T17:30:00Z',
    expected: { sunrise: '2018-09-12T11:13:00Z', sunset: '2018-09-12T23:50:00Z' },
  },
  {
    // Manual of Skyfield.
    source: 'Bluffton, 13 September 2018', place: bluffton, noon: '2018-09-13T17:30:00Z',
    expected: { sunrise: '2018-09-13T11:14:12Z', sunset: '2018-09-13T23:47:56Z' },
  },
  {
    // Published city tables, quoted in the tests of astral (all London rows and New Delhi).
    source: 'London, 1 December 2015', place: london, noon: '2015-12-01T12:00:00Z',
    expected: {
      nauticalDawn: '2015-12-01T06:22:00Z', civilDawn: '2015-12-01T07:04:00Z', sunrise: '2015-12-01T07:43:00Z',
      sunset: '2015-12-01T15:55:00Z', civilDusk: '2015-12-01T16:34:00Z', nauticalDusk: '2015-12-01T17:16:00Z',
    },
  },
  {
    source: 'London, 2 December 2015', place: london, noon: '2015-12-02T12:00:00Z',
    expected: {
      nauticalDawn: '2015-12-02T06:23:00Z', civilDawn: '2015-12-02T07:05:00Z', sunrise: '2015-12-02T07:45:00Z',
      sunset: '2015-12-02T15:54:00Z', civilDusk: '2015-12-02T16:34:00Z', nauticalDusk: '2015-12-02T17:16:00Z',
    },
  },
  {
    source: 'London, 3 December 2015', place: london, noon: '2015-12-03T12:00:00Z',
    expected: {
      nauticalDawn: '2015-12-03T06:24:00Z', civilDawn: '2015-12-03T07:06:00Z', sunrise: '2015-12-03T07:46:00Z',
      sunset: '2015-12-03T15:54:00Z', civilDusk: '2015-12-03T16:33:00Z', nauticalDusk: '2015-12-03T17:16:00Z',
    },
  },
  {
    source: 'London, 1 January 2015', place: london, noon: '2015-01-01T12:00:00Z',
    expected: { sunrise: '2015-01-01T08:06:00Z', sunset: '2015-01-01T16:01:00Z' },
  },
  {
    source: 'London, 29 August 2019', place: london, noon: '2019-08-29T12:00:00Z',
    expected: {
      civilDawn: '2019-08-29T04:32:00Z', sunrise: '2019-08-29T05:08:00Z',
      sunset: '2019-08-29T18:54:00Z', civilDusk: '2019-08-29T19:30:00Z',
    },
  },
  {
    source: 'New Delhi, 1 December 2015', place: delhi, noon: '2015-12-01T06:30:00Z',
    expected: { civilDawn: '2015-12-01T01:00:00Z' },
  },
  {
    // Almanac for Computers 1990, worked example (edwilliams.org/sunrise_sunset_algorithm.htm):
    // 05:26 by clocks four hours behind UTC (result from memory of the example).
    source: 'Wayne, 25 June 1990', place: wayne, noon: '1990-06-25T17:00:00Z',
    expected: { sunrise: '1990-06-25T09:26:00Z' },
  },
];

describe('published sun times', () => {
  it.each(rows)('$source', ({ place, noon, expected }) => {
    const light = lightOf(place, noon);
    for (const [name, time] of Object.entries(expected)) {
      const own = light[name as keyof Light];
      expect(own, name).not.toBeNull();
      const seconds = Math.abs(Date.parse(own!) - Date.parse(time)) / 1000;
      expect(seconds, `${name} ${own}`).toBeLessThanOrEqual(60);
    }
    expect(light.polar).toBeNull();
  });

  // Manual of Skyfield: at Harra the sun still rises on 18 December 2022 (10:22:54), and does not from
  // the 20th to the 23rd, when it comes no higher than 50.3' to 50.8' below the horizon.
  it.each([20, 21, 22, 23])('Harra, %d December 2022: no sunrise', (day) => {
    const light = lightOf(harra, `2022-12-${day}T10:40:00Z`);
    expect(light).toMatchObject({ sunrise: null, sunset: null, polar: 'night' });
    expect(light.civilDawn).not.toBeNull();
  });

  // The tests of astral: at Tromso the sun neither rises nor sets on 5 June 2019; it is up all day.
  it('Tromso, 5 June 2019: the sun stays up', () => {
    const light = lightOf(tromso, '2019-06-05T10:45:00Z');
    expect(light).toMatchObject({ sunrise: null, sunset: null, polar: 'day' });
  });
});

describe('near the edge of polar night', () => {
  it('Harra, 18 December 2022: the sun still rises, when the manual of Skyfield says', () => {
    const light = lightOf(harra, '2022-12-18T10:40:00Z');
    expect(light.sunrise).not.toBeNull();
    const seconds =
      Math.abs(Date.parse(light.sunrise!) - Date.parse('2022-12-18T10:22:54Z')) / 1000;
    expect(seconds).toBeLessThanOrEqual(60);
  });
});

describe('the moon', () => {
  // JPL Horizons, quoted in the tests of Skyfield; the US Naval Observatory prints the same to two decimals: 0.00, 0.00,
  // 0.03, 0.08 and 0.15.
  it.each([
    ['2018-09-09', 0.0049123, 0],
    ['2018-09-10', 0.0041526, 0],
    ['2018-09-11', 0.031232, 3],
    ['2018-09-12', 0.08254, 8],
    ['2018-09-13', 0.1530485, 15],
  ] as const)('is lit on %s at 05:00 as much as tabled', (date, lit, percent) => {
    const instant = `${date}T05:00:00Z`;
    expect(Math.abs(moonLit(instant) - lit)).toBeLessThan(0.0005);
    expect(moonSentence(instant)).toBe(`The moon is ${percent} % lit.`);
  });

  // Meeus, Astronomical Algorithms, example 48.a: phase angle 69.0756 degrees, k = 0.6786 (the date, 12 April 1992 at
  // 0h dynamical time, 59 s ahead of UTC, from memory of the book).
  it('has the lit share of the worked example', () => {
    expect(Math.abs(moonLit('1992-04-11T23:59:01Z') - 0.6786)).toBeLessThan(0.0001);
  });

  // First quarter 16 September 2018, 23:15 (US Naval Observatory, quoted in the tests of Skyfield).
  it('is half lit at first quarter', () => {
    expect(Math.abs(moonLit('2018-09-16T23:15:00Z') - 0.5)).toBeLessThan(0.005);
  });
});
