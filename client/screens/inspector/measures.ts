import type { Measure, Range } from '#domain/tasks/hold.ts';
import { verdictOn } from '#domain/tasks/measured.ts';
import { words } from '../../words/words.ts';

/** What stands in the form: text as typed, or an answer; absent while untouched. */
export type Typed = Readonly<Record<string, string | boolean | undefined>>;

export type Values = Readonly<Record<string, number | boolean>>;

/** The limit of a measure in words: "at most 5 mm", "must be yes". */
export function limitWords({ unit, least, most }: Measure): string {
  if (unit === 'yes') return words.inspector.mustBeYes;
  return rangeWords(
    { ...(least !== undefined && { least }), ...(most !== undefined && { most }) },
    unit,
  );
}

/** All that a value is held against: limit, range where it ought to lie, what was reckoned, whether it is wanted. */
export function againstWords(measure: Measure): string {
  const { unit, soft, reckoned, optional } = measure;
  const said = words.inspector;
  return [
    limitWords(measure),
    ...(soft ? [said.ought(rangeWords(soft, unit))] : []),
    ...(reckoned === undefined ? [] : [said.reckoned(withUnit(reckoned, unit))]),
    ...(optional ? [said.optional] : []),
  ].join('; ');
}

/** A number with its unit: "5 mm", "48". */
export function withUnit(number: number, unit: Measure['unit']): string {
  return [number, words.inspector.units[unit]].filter((part) => part !== '').join(' ');
}

function rangeWords({ least, most }: Range, unit: Measure['unit']): string {
  const said = words.inspector;
  const value = (number: number): string => withUnit(number, unit);
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

/** What is wrong with these values, by measure, as sentences. What only wants a reason is not among it. */
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

function faultOf(measure: Measure, typed: string | boolean | undefined): string | null {
  const said = words.inspector;
  const unread = typeof typed === 'string' && typed.trim() !== '' && numberIn(typed) === null;
  if (unread) return said.notANumber;
  switch (verdictOn(measure, valuesIn([measure], { [measure.key]: typed })[measure.key])) {
    case 'missing':
      return measure.unit === 'yes'
        ? said.answerMissing(measure.name)
        : said.numberMissing(measure.name);
    case 'no':
      return said.saidNo;
    case 'beyond':
      return said.outside(limitWords(measure));
    default:
      return null;
  }
}
