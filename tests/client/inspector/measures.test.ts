import { describe, expect, it } from 'vitest';
import {
  againstWords,
  limitWords,
  measureFaults,
  numberIn,
  valuesIn,
} from '#client/screens/inspector/measures.ts';
import type { Measure } from '#domain/tasks/hold.ts';

const level: Measure = { key: 'level', name: 'Rollers out of level', unit: 'mm', most: 5 };
const pins: Measure = { key: 'pins', name: 'Pins home', unit: 'count', least: 48, most: 48 };
const bearing: Measure = { key: 'bearing', name: 'Bearing', unit: 'm', least: 0.5, most: 1.2 };
const clear: Measure = { key: 'clear', name: 'Nobody under the bridge', unit: 'yes' };
const all = [level, pins, bearing, clear];
const good = { level: '3', pins: '48', bearing: '0,8', clear: true };

describe('measured values', () => {
  it('are read with a point or a comma, and nothing else passes for a number', () => {
    expect(valuesIn(all, good)).toEqual({ level: 3, pins: 48, bearing: 0.8, clear: true });
    for (const text of ['', '3 mm', '1.2.3', 'three', '1e3', '-', '.'])
      expect(numberIn(text)).toBeNull();
  });

  it('inside every limit have no fault', () => {
    expect(measureFaults(all, good).size).toBe(0);
  });

  it('at the limit are inside it', () => {
    expect(measureFaults(all, { ...good, level: '5', bearing: '0.5' }).size).toBe(0);
  });

  for (const [key, value, sentence] of [
    ['level', '6', 'at most 5 mm'],
    ['level', '', 'Rollers out of level'],
    ['level', undefined, 'Rollers out of level'],
    ['level', 'about 3', 'number'],
    ['pins', '47', 'must be 48'],
    ['bearing', '1.3', 'from 0.5 m to 1.2 m'],
    ['clear', false, 'must be so'],
    ['clear', undefined, 'Nobody under the bridge'],
  ] as const) {
    it(`${key} as ${String(value)} is a fault that says what is wanted`, () => {
      const faults = measureFaults(all, { ...good, [key]: value });
      expect([...faults.keys()]).toEqual([key]);
      expect(faults.get(key)).toContain(sentence);
    });
  }

  it('that cannot be read are left out when a hold fails, and an answer of no is kept', () => {
    expect(valuesIn(all, { level: 'broken', clear: false })).toEqual({ clear: false });
  });
});

describe('a value outside the range where it ought to lie', () => {
  const wind: Measure = { key: 'wind', name: 'Wind', unit: 'm/s', most: 12, soft: { most: 8 } };

  it('is no fault: it only wants a reason', () => {
    expect(measureFaults([wind], { wind: '9' }).size).toBe(0);
    expect(measureFaults([wind], { wind: '12.5' }).size).toBe(1);
  });

  it('has limit, range and what was reckoned said beside the field', () => {
    expect(againstWords({ ...wind, reckoned: 4 })).toBe(
      'at most 12 m/s; ought to be at most 8 m/s; reckoned 4 m/s',
    );
  });

  it('may be left out where the kit says so, and is a fault when it cannot be read', () => {
    const optional: Measure = { ...wind, optional: true };
    expect(measureFaults([optional], {}).size).toBe(0);
    expect([...measureFaults([optional], { wind: 'calm' }).values()]).toEqual([
      'Write a number, like 3 or 3.5.',
    ]);
    expect(againstWords(optional)).toContain('may be left out');
  });
});

describe('a limit in words', () => {
  it('carries its unit, and says so when there is none', () => {
    expect(all.map(limitWords)).toEqual([
      'at most 5 mm',
      'must be 48',
      'from 0.5 m to 1.2 m',
      'must be yes',
    ]);
    expect(limitWords({ key: 'wind', name: 'Wind', unit: 'm/s' })).toBe('no limit given');
  });
});
