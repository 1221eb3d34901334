import type { Kit } from '../kit/kit.ts';
import type { BankGround } from './ground.ts';

/**
 * Least setback of the bearing from the bank's edge by the kit's rule, in metres. A made abutment: the kit's figure. A
 * natural bank: so many times its height back from the toe, of which a sloping face already takes `height / tan(slope)`;
 * an unmeasured slope is taken as upright. Null where the kit has no rule, or the height of a natural bank is unknown.
 */
export function setbackRule(bank: BankGround, kit: Kit): number | null {
  const { setbackMade, setbackNatural } = kit.limits ?? {};
  if (bank.kind === 'made') {
    return setbackMade ?? null;
  }
  if (setbackNatural === undefined || bank.height === null) {
    return null;
  }
  const slope = bank.slope ?? 90;
  const face = slope >= 90 ? 0 : bank.height / Math.tan((slope * Math.PI) / 180);
  return Math.max(0, setbackNatural * bank.height - face);
}
