import type { Ground } from '#domain/bridge/ground.ts';
import { type GroundField, groundFields } from '#domain/bridge/groundFields.ts';
import { groundNumbers } from '#domain/bridge/groundNumbers.ts';
import { words } from '../../../words/words.ts';
import { numberIn } from '../../inspector/measures.ts';

/** Where a measured number stands in the ground file: `near.height`. */
export type Measured = keyof typeof words.ground.fields;

type BankForm = {
  readonly kind: 'made' | 'natural';
  /** Empty where nobody has said. */
  readonly soil: '' | 'firm' | 'soft';
};

/** The form as it stands: texts as typed; null is "not measured". */
export type GroundForm = {
  readonly values: Readonly<Record<Measured, string | null>>;
  readonly near: BankForm;
  readonly far: BankForm;
};

/** What may be changed at once. */
export type GroundChange = {
  readonly values?: Partial<GroundForm['values']>;
  readonly near?: Partial<BankForm>;
  readonly far?: Partial<BankForm>;
};

/** A field of the form and what is known of it; the catalogue has a label for each. */
export type FormField = GroundField & { readonly field: Measured };

const isMeasured = (one: GroundField): one is FormField =>
  Object.hasOwn(words.ground.fields, one.field);

export const formFields: readonly FormField[] = groundFields.filter(isMeasured);

/** Units of the form to one of the file: centimetres an hour for the rise, per cent for falls. */
const perUnit: Partial<Record<GroundField['kind'], number>> = {
  rise: 100,
  crossFall: 100,
  approachSlope: 100,
  rollerFall: 100,
};

function inForm({ kind }: FormField, value: number): number {
  return Number((value * (perUnit[kind] ?? 1)).toFixed(6));
}

/** From and to in the unit of the form, which that of the file may not be, and why it is asked for. */
export function aboutField(field: FormField) {
  const { least, most, unknown, reason, unit } = groundNumbers[field.kind];
  const own = words.ground.units[field.kind as keyof typeof words.ground.units];
  return {
    least: inForm(field, least),
    most: inForm(field, most),
    unit: own ?? unit,
    mayBeUnknown: unknown,
    reason,
  };
}

/** Measured everywhere: empty until it is typed. All else begins as not measured. */
const asked: ReadonlySet<Measured> = new Set<Measured>([
  'gap',
  'loadClass',
  'near.height',
  'far.height',
  'roomBehind',
  'water.depth',
  'water.rise',
]);

function valuesOf(of: (field: FormField) => string | null): GroundForm['values'] {
  return Object.fromEntries(formFields.map((one) => [one.field, of(one)])) as GroundForm['values'];
}

export const emptyForm: GroundForm = {
  values: valuesOf(({ field, kind }) => (kind === 'setback' ? '0' : asked.has(field) ? '' : null)),
  near: { kind: 'made', soil: '' },
  far: { kind: 'made', soil: '' },
};

/** The form that a ground fills. */
export function formOf(ground: Ground): GroundForm {
  const bank = ({ kind, soil }: Ground['near']): BankForm => ({ kind, soil: soil ?? '' });
  return {
    values: valuesOf((field) => {
      const value = field.get(ground);
      return value === null ? null : String(inForm(field, value));
    }),
    near: bank(ground.near),
    far: bank(ground.far),
  };
}

export function changed(form: GroundForm, change: GroundChange): GroundForm {
  return {
    values: { ...form.values, ...change.values },
    near: { ...form.near, ...change.near },
    far: { ...form.far, ...change.far },
  };
}

/** The fields that are neither filled in nor marked as not measured, but may be: what nobody measured on a dark night. */
export function leftOpen({ values }: GroundForm): readonly Measured[] {
  return formFields
    .filter((one) => aboutField(one).mayBeUnknown && values[one.field]?.trim() === '')
    .map(({ field }) => field);
}

/** The form with all of those marked as not measured. */
export function withoutMeasure(form: GroundForm): GroundForm {
  const unknown = Object.fromEntries(leftOpen(form).map((field) => [field, null]));
  return changed(form, { values: unknown });
}

/** What is wrong with each value, as a sentence; a value that is right has none. */
export function groundFaults({ values }: GroundForm): ReadonlyMap<Measured, string> {
  const faults = new Map<Measured, string>();
  for (const field of formFields) {
    const fault = faultOf(field, values[field.field]);
    if (fault !== null) faults.set(field.field, fault);
  }
  // Half a place is no place.
  const [latitude, longitude] = [values['place.latitude'], values['place.longitude']];
  if ((latitude === null) !== (longitude === null)) {
    faults.set(latitude === null ? 'place.latitude' : 'place.longitude', words.ground.missingOr);
  }
  return faults;
}

function faultOf(field: FormField, typed: string | null): string | null {
  const said = words.ground;
  const { least, most, unit, mayBeUnknown } = aboutField(field);
  if (typed === null) return mayBeUnknown ? null : said.missing;
  if (typed.trim() === '') return mayBeUnknown ? said.missingOr : said.missing;
  const value = numberIn(typed);
  if (value === null || (field.kind === 'loadClass' && !Number.isInteger(value)))
    return said.notANumber;
  return value < least || value > most
    ? said.outside(said.range(String(least), String(most), unit))
    : null;
}

/**
 * The ground that the form describes. What may stay unknown and is empty or wrong is unknown, so that the side view
 * grows while numbers are typed; null while gap, load class or setbacks are missing or wrong. What the form does not
 * show stays as it was measured `before`.
 */
export function groundIn(
  form: GroundForm,
  name: string,
  zone: string,
  before: Ground | null = null,
): Ground | null {
  const bank = (side: 'near' | 'far'): Ground['near'] => ({
    ...before?.[side],
    kind: form[side].kind,
    soil: form[side].soil === '' ? null : form[side].soil,
    setback: 0,
    height: null,
    slope: null,
    strength: null,
    crossFall: null,
    approach: { length: null, slope: null },
  });
  let ground: Ground = {
    ...before,
    format: 'spanwright-ground',
    version: 1,
    name,
    zone,
    place: null,
    gap: 0,
    near: bank('near'),
    far: bank('far'),
    roomBehind: null,
    rollerFall: null,
    water: { ...before?.water, depth: null, rise: null, level: null, limit: null },
    wind: null,
    loadClass: 0,
  };
  const read = (field: FormField): number | null => {
    const typed = form.values[field.field];
    return faultOf(field, typed) === null ? numberIn(typed ?? '') : null;
  };
  const placed = formFields.filter(({ field }) => field.startsWith('place.'));
  const halfPlaced = placed.some((field) => read(field) === null);
  for (const field of formFields) {
    const value = read(field);
    if (value === null) {
      if (!aboutField(field).mayBeUnknown) return null;
    } else if (!(halfPlaced && placed.includes(field))) {
      ground = field.set(ground, Number((value / (perUnit[field.kind] ?? 1)).toFixed(9)));
    }
  }
  return ground;
}
