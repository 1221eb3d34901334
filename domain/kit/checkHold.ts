import type { AddFault } from './addFault.ts';
import type { Kit } from './kit.ts';
import type { HoldTemplate, TaskTemplate } from './order.ts';

type MeasureTemplate = HoldTemplate['measures'][number];

/** What a hold measures: keys once, limits and ranges that can be met. */
export function checkHold({ hold }: TaskTemplate, path: string, kit: Kit, add: AddFault): void {
  const keys = new Set<string>();
  for (const [at, measure] of (hold?.measures ?? []).entries()) {
    const where = `${path}/hold/measures/${at}`;
    if (keys.has(measure.key)) {
      add(`${where}/key`, measure.key, 'a key that no earlier measure of this hold has');
    }
    keys.add(measure.key);
    if (measure.unit === 'yes') {
      checkSeen(measure, where, add);
    } else {
      checkRange(measure, where, kit, add);
    }
  }
}

/** A thing seen is so or is not: it has no limits. */
function checkSeen(measure: MeasureTemplate, where: string, add: AddFault): void {
  for (const field of ['least', 'most', 'soft', 'reckoned'] as const) {
    if (measure[field] !== undefined) {
      add(
        `${where}/${field}`,
        `${field} of a thing that is seen`,
        'nothing, or a unit other than yes',
      );
    }
  }
}

function checkRange(
  { least, most, soft }: MeasureTemplate,
  where: string,
  kit: Kit,
  add: AddFault,
): void {
  if (typeof least === 'number' && typeof most === 'number' && least > most) {
    add(`${where}/least`, String(least), `at most ${most}`);
  }
  for (const [field, limit] of Object.entries({ least, most })) {
    if (limit === 'wind' && kit.limits?.wind === undefined) {
      add(`${where}/${field}`, limit, 'a number: this kit has no limits/wind');
    }
  }
  if (!soft) {
    return;
  }
  if (soft.least === undefined && soft.most === undefined) {
    add(`${where}/soft`, 'neither least nor most', 'at least one of them');
  }
  if (soft.least !== undefined && soft.most !== undefined && soft.least > soft.most) {
    add(`${where}/soft/least`, String(soft.least), `at most ${soft.most}`);
  }
  const floor = numberOf(least, kit);
  const ceiling = numberOf(most, kit);
  if (soft.least !== undefined && floor !== undefined && soft.least < floor) {
    add(`${where}/soft/least`, String(soft.least), `at least ${floor}: inside the limit`);
  }
  if (soft.most !== undefined && ceiling !== undefined && soft.most > ceiling) {
    add(`${where}/soft/most`, String(soft.most), `at most ${ceiling}: inside the limit`);
  }
}

/** The number behind a limit where it is the same for every length. */
function numberOf(limit: MeasureTemplate['least'], kit: Kit): number | undefined {
  switch (limit) {
    case 'wind':
      return kit.limits?.wind;
    case 'margin':
      return kit.launch?.margin;
    case 'bearing-near':
      return kit.bearing.near;
    case 'bearing-far':
      return kit.bearing.far;
    case 'bays':
    case 'decked':
      return undefined;
    default:
      return limit;
  }
}
