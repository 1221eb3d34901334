import type { Bridge } from '../../bridge/bridge.ts';
import type { Reference } from '../../kit/order.ts';
import { type CarriedLoad, loadsCarrying } from './loads.ts';
import type { Axis, Repetition } from './repetition.ts';

/** Whose reference it is, and what it may be about. */
export type Asker = {
  readonly repetition: Repetition;
  readonly axes: readonly Axis[];
  readonly uses: readonly string[];
};

/** Whether the repetition of another template is meant by a reference (see `Reference`). */
export function isMeant(
  reference: Reference,
  asker: Asker,
  other: Repetition,
  otherAxes: readonly Axis[],
  site: { readonly bridge: Bridge; readonly loads: readonly CarriedLoad[] },
): boolean {
  const own = asker.repetition;
  const byDefault = (axis: Axis) =>
    asker.axes.includes(axis) && otherAxes.includes(axis) ? 'same' : 'all';
  return (
    along(reference.bays ?? byDefault('bays'), own.bays, other.bays, site.bridge.bays) &&
    along(
      reference.sections ?? byDefault('sections'),
      own.sections,
      other.sections,
      site.bridge.nose,
    ) &&
    atStage(reference.stage ?? byDefault('stage'), own.stage, other.stage, site.bridge) &&
    paired(reference.side ?? byDefault('side'), own.side, other.side) &&
    paired(reference.bank ?? byDefault('bank'), own.bank, other.bank) &&
    onLoad(reference.load ?? byDefault('load'), asker, other.load, site.loads)
  );
}

/** Bays or sections: whether the other is about one of those wanted. `count` is how many there are. */
function along(
  wanted: string,
  own: readonly number[] | null,
  other: readonly number[] | null,
  count: number,
): boolean {
  if (wanted === 'all') {
    return true;
  }
  if (other === null) {
    return false;
  }
  if (wanted === 'first' || wanted === 'last') {
    return other.includes(wanted === 'first' ? 1 : count);
  }
  if (own === null || own.length === 0) {
    return false;
  }
  if (wanted === 'same') {
    return other.some((one) => own.includes(one));
  }
  const [steps = '', way = '', , end] = wanted.split(' ');
  const at = way === 'ahead' ? Math.min(...own) - Number(steps) : Math.max(...own) + Number(steps);
  return other.includes(end === undefined ? at : Math.min(count, Math.max(1, at)));
}

function atStage(
  wanted: NonNullable<Reference['stage']>,
  own: number | null,
  other: number | null,
  bridge: Bridge,
): boolean {
  switch (wanted) {
    case 'all':
      return true;
    case 'same':
      return own !== null && other === own;
    case 'previous':
      return own !== null && other === own - 1;
    case 'next':
      return own !== null && other === own + 1;
    case 'first':
      return other === 1;
    case 'landing':
      return other !== null && bridge.stages[other - 1]?.lands === true;
    case 'last':
      return other === bridge.stages.length;
  }
}

function paired(wanted: string, own: string | null, other: string | null): boolean {
  switch (wanted) {
    case 'all':
      return true;
    case 'same':
      return own !== null && other === own;
    case 'other':
      return own !== null && other !== null && other !== own;
    default:
      return other === wanted;
  }
}

function onLoad(
  wanted: string,
  asker: Asker,
  other: CarriedLoad | null,
  loads: readonly CarriedLoad[],
): boolean {
  switch (wanted) {
    case 'all':
      return true;
    case 'same':
      return other !== null && other.id === asker.repetition.load?.id;
    case 'used':
      return (
        other !== null &&
        asker.uses.some((group) =>
          loadsCarrying(loads, group, asker.repetition.bays).some(({ id }) => id === other.id),
        )
      );
    default:
      return other?.from === wanted;
  }
}
