import type { Ground } from '#domain/bridge/ground.ts';
import { words } from '../../../words/words.ts';
import { numberIn } from '../../inspector/measures.ts';

/** Everything that is measured in numbers, as the form names it. */
export type Measured = keyof typeof words.ground.fields;

/** What may stay unknown: marked so, never guessed. */
export const mayBeUnknown: ReadonlySet<Measured> = new Set([
  'nearHeight',
  'farHeight',
  'roomBehind',
  'depth',
  'rise',
  'latitude',
  'longitude',
]);

/** From and to, in the unit of the form: metres, but centimetres an hour for the rise. */
export const ranges: Readonly<Record<Measured, readonly [least: number, most: number]>> = {
  gap: [1, 200],
  nearHeight: [0, 60],
  farHeight: [0, 60],
  nearSetback: [0, 20],
  farSetback: [0, 20],
  roomBehind: [0, 500],
  depth: [0, 60],
  rise: [-500, 500],
  loadClass: [1, 150],
  latitude: [-90, 90],
  longitude: [-180, 180],
};

/** The form as it stands: texts as typed; null is "not measured". */
export type GroundForm = Readonly<Record<Measured, string | null>> & {
  readonly nearKind: 'made' | 'natural';
  readonly farKind: 'made' | 'natural';
};

export const emptyForm: GroundForm = {
  gap: '',
  nearHeight: '',
  farHeight: '',
  nearSetback: '0',
  farSetback: '0',
  roomBehind: '',
  depth: '',
  rise: '',
  loadClass: '',
  latitude: null,
  longitude: null,
  nearKind: 'made',
  farKind: 'made',
};

/** The form that a ground fills. */
export function formOf(ground: Ground): GroundForm {
  const text = (value: number | null | undefined): string | null =>
    value === null || value === undefined ? null : String(Number(value.toFixed(6)));
  const { near, far, water, place } = ground;
  return {
    gap: text(ground.gap),
    nearHeight: text(near.height),
    farHeight: text(far.height),
    nearSetback: text(near.setback),
    farSetback: text(far.setback),
    roomBehind: text(ground.roomBehind),
    depth: text(water.depth),
    rise: text(water.rise === null ? null : water.rise * 100),
    loadClass: text(ground.loadClass),
    latitude: text(place?.latitude),
    longitude: text(place?.longitude),
    nearKind: near.kind,
    farKind: far.kind,
  };
}

/** What is wrong with each value, as a sentence; a value that is right has none. */
export function groundFaults(form: GroundForm): ReadonlyMap<Measured, string> {
  const faults = new Map<Measured, string>();
  for (const field of Object.keys(ranges) as Measured[]) {
    const fault = faultOf(field, form[field]);
    if (fault !== null) faults.set(field, fault);
  }
  // Half a place is no place.
  if ((form.latitude === null) !== (form.longitude === null)) {
    const empty = form.latitude === null ? 'latitude' : 'longitude';
    faults.set(empty, words.ground.missingOr);
  }
  return faults;
}

function faultOf(field: Measured, typed: string | null): string | null {
  const said = words.ground;
  if (typed === null) return null;
  if (typed.trim() === '') return mayBeUnknown.has(field) ? said.missingOr : said.missing;
  const value = numberIn(typed);
  if (value === null || (field === 'loadClass' && !Number.isInteger(value))) return said.notANumber;
  const [least, most] = ranges[field];
  return value < least || value > most
    ? said.outside(said.range(String(least), String(most)))
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
  const value = (field: Measured): number | null =>
    faultOf(field, form[field]) === null ? numberIn(form[field] ?? '') : null;
  const gap = value('gap');
  const loadClass = value('loadClass');
  const nearSetback = value('nearSetback');
  const farSetback = value('farSetback');
  if (gap === null || loadClass === null || nearSetback === null || farSetback === null)
    return null;
  const latitude = value('latitude');
  const longitude = value('longitude');
  const rise = value('rise');
  return {
    ...before,
    format: 'spanwright-ground',
    version: 1,
    name,
    zone,
    place: latitude === null || longitude === null ? null : { latitude, longitude },
    gap,
    near: {
      ...before?.near,
      kind: form.nearKind,
      height: value('nearHeight'),
      setback: nearSetback,
    },
    far: { ...before?.far, kind: form.farKind, height: value('farHeight'), setback: farSetback },
    roomBehind: value('roomBehind'),
    water: { ...before?.water, depth: value('depth'), rise: rise === null ? null : rise / 100 },
    loadClass,
  };
}
