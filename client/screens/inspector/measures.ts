import type { Measure } from '#domain/tasks/hold.ts';
import { words } from '../../words/words.ts';

/** What stands in the form: text as typed, or an answer; absent while untouched. */
export type Typed = Readonly<Record<string, string | boolean | undefined>>;

export type Values = Readonly<Record<string, number | boolean>>;

/** The limit of a measure in words: "at most 5 mm", "must be yes". */
export function limitWords({ unit, least, most }: Measure): string {
  const said = words.inspector;
  if (unit === 'yes') return said.mustBeYes;
  const value = (number: number): string =>
    [number, said.units[unit]].filter((part) => part !== '').join(' ');
  if (least !== undefined && most !== undefined) {
    return least === most ? said.exactly(value(least)) : said.between(value(least), value(most));
  }
  if (least !== undefined) return said.atLeast(value(least));
  return most === undefined ? said.noLimit : said.atMost(value(most));
}

/** A decimal number as people write it, with point or comma; null when it is none. */
export function numberIn(text: string): number | null {
  const plain = text.trim().replace(',', '.').replace('−', '-');
  return /^[+-]?(\d+(\.\d*)?|\.\d+)$/.test(plain) ? Number(plain) : null;
}

/** The values that can be read from the form; what is empty or no number is left out. */
export function valuesIn(measures: readonly Measure[], typed: Typed): Values {
  return Object.fromEntries(
    measures.flatMap(({ key }): [string, number | boolean][] => {
      const value = typed[key];
      if (typeof value === 'boolean') return [[key, value]];
      const number = value === undefined ? null : numberIn(value);
      return number === null ? [] : [[key, number]];
    }),
  );
}

/** What keeps a hold from being passed with these values, by measure, as sentences. */
export function measureFaults(
  measures: readonly Measure[],
  typed: Typed,
): ReadonlyMap<string, string> {
  const faults = new Map<string, string>();
  for (const measure of measures) {
    const fault = faultOf(measure, typed[measure.key]);
    if (fault !== null) faults.set(measure.key, fault);
  }
  return faults;
}

function faultOf(measure: Measure, value: string | boolean | undefined): string | null {
  const said = words.inspector;
  const { unit, name, least, most } = measure;
  if (unit === 'yes') {
    if (typeof value !== 'boolean') return said.answerMissing(name);
    return value ? null : said.saidNo;
  }
  if (typeof value !== 'string' || value.trim() === '') return said.numberMissing(name);
  const number = numberIn(value);
  if (number === null) return said.notANumber;
  const inside = (least === undefined || number >= least) && (most === undefined || number <= most);
  return inside ? null : said.outside(limitWords(measure));
}
