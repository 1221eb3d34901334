import type { Measure, Range } from './hold.ts';

/** A value as it was read: a number in the measure's unit, or whether a thing was seen to be so. */
export type Read = number | boolean | undefined;

/**
 * What a value means for a pass: `missing` has to be entered first; `no` is a thing that is not so; `beyond` lies
 * outside a hard limit; `outside` lies inside the limits but not where it ought to; `good` is none of these, or was
 * allowed to be left out.
 */
export type Verdict = 'missing' | 'no' | 'beyond' | 'outside' | 'good';

/** Judges one value that was read. A value on a limit lies inside it. */
export function verdictOn(measure: Measure, value: Read): Verdict {
  if (measure.unit === 'yes') {
    if (typeof value === 'boolean') return value ? 'good' : 'no';
    return measure.optional ? 'good' : 'missing';
  }
  if (typeof value !== 'number' || !Number.isFinite(value))
    return measure.optional && value === undefined ? 'good' : 'missing';
  if (!isWithin(measure, value)) return 'beyond';
  return measure.soft && !isWithin(measure.soft, value) ? 'outside' : 'good';
}

/** The measures whose values have one of these verdicts, in the order of the hold. */
export function measuresThat(
  measures: readonly Measure[],
  values: Readonly<Record<string, Read>>,
  ...verdicts: readonly Verdict[]
): Measure[] {
  return measures.filter((measure) => verdicts.includes(verdictOn(measure, values[measure.key])));
}

function isWithin({ least, most }: Range, value: number): boolean {
  return (least === undefined || value >= least) && (most === undefined || value <= most);
}

/** "at most 5 mm", "at least 0 mm and at most 5 mm"; empty for a range without ends. */
export function rangeInWords({ least, most }: Range, unit: Measure['unit']): string {
  const shown = unit === 'count' ? '' : ` ${unit}`;
  return [
    ...(least === undefined ? [] : [`at least ${least}${shown}`]),
    ...(most === undefined ? [] : [`at most ${most}${shown}`]),
  ].join(' and ');
}

/** What is wrong with a value, for a sentence: "wind is 14 m/s, allowed is at most 12 m/s". */
export function faultInWords(measure: Measure, value: Read): string {
  const { name, unit } = measure;
  const verdict = verdictOn(measure, value);
  if (verdict === 'no') return `${name} is not so`;
  const range =
    verdict === 'outside'
      ? `ought to be ${rangeInWords(measure.soft ?? {}, unit)}`
      : `allowed is ${rangeInWords(measure, unit)}`;
  return `${name} is ${value}${unit === 'count' ? '' : ` ${unit}`}, ${range}`;
}
