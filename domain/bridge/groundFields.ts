import type { BankGround, Ground } from './ground.ts';
import type { groundNumbers } from './groundNumbers.ts';

/** A number of a ground file: where it stands, of which kind it is, how it is read and set. */
export type GroundField = {
  /** As in the file: `near.height`. */
  readonly field: string;
  readonly kind: keyof typeof groundNumbers;
  /** Null where it is unknown, left out of the file included. */
  readonly get: (ground: Ground) => number | null;
  readonly set: (ground: Ground, value: number) => Ground;
};

const none = { length: null, slope: null };

function onBank(
  bank: 'near' | 'far',
  name: string,
  kind: GroundField['kind'],
  get: (bank: BankGround) => number | null | undefined,
  set: (bank: BankGround, value: number) => BankGround,
): GroundField {
  return {
    field: `${bank}.${name}`,
    kind,
    get: (ground) => get(ground[bank]) ?? null,
    set: (ground, value) => ({ ...ground, [bank]: set(ground[bank], value) }),
  };
}

function ofBank(bank: 'near' | 'far'): GroundField[] {
  const plain = (name: 'height' | 'setback' | 'slope' | 'strength' | 'crossFall') =>
    onBank(
      bank,
      name,
      name,
      (one) => one[name],
      (one, value) => ({ ...one, [name]: value }),
    );
  const approach = (name: 'length' | 'slope', kind: 'approachLength' | 'approachSlope') =>
    onBank(
      bank,
      `approach.${name}`,
      kind,
      (one) => one.approach?.[name],
      (one, value) => ({ ...one, approach: { ...(one.approach ?? none), [name]: value } }),
    );
  return [
    plain('height'),
    plain('setback'),
    plain('slope'),
    plain('strength'),
    plain('crossFall'),
    approach('length', 'approachLength'),
    approach('slope', 'approachSlope'),
  ];
}

function plain(name: 'gap' | 'roomBehind' | 'rollerFall' | 'wind' | 'loadClass'): GroundField {
  return {
    field: name,
    kind: name,
    get: (ground) => ground[name] ?? null,
    set: (ground, value) => ({ ...ground, [name]: value }),
  };
}

function ofWater(name: 'depth' | 'rise' | 'level' | 'limit'): GroundField {
  return {
    field: `water.${name}`,
    kind: name,
    get: ({ water }) => water[name] ?? null,
    set: (ground, value) => ({ ...ground, water: { ...ground.water, [name]: value } }),
  };
}

function ofPlace(name: 'latitude' | 'longitude'): GroundField {
  return {
    field: `place.${name}`,
    kind: name,
    get: ({ place }) => place?.[name] ?? null,
    set: (ground, value) => ({
      ...ground,
      place: { ...(ground.place ?? { latitude: 0, longitude: 0 }), [name]: value },
    }),
  };
}

/** Every number of a ground file, in the order in which a site is measured. */
export const groundFields: readonly GroundField[] = [
  plain('gap'),
  ...ofBank('near'),
  ...ofBank('far'),
  plain('roomBehind'),
  plain('rollerFall'),
  ofWater('depth'),
  ofWater('rise'),
  ofWater('level'),
  ofWater('limit'),
  plain('wind'),
  plain('loadClass'),
  ofPlace('latitude'),
  ofPlace('longitude'),
];
