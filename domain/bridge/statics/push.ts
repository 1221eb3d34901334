import type { LaunchRules } from '../../kit/kit.ts';
import { gravity } from './centreOfGravity.ts';

/** What it takes to move the bridge. Newtons. */
export type Push = {
  /** Force forwards that keeps it rolling. */
  readonly newtons: number;
  /** Force that must hold it back because it would run away by itself; 0 where it would not. */
  readonly holdBack: number;
  /** People who can do either by hand; null where the kit does not say what one person pushes. */
  readonly people: number | null;
  /** Whether the kit's vehicle can; null where the kit does not say what it pushes. */
  readonly vehicle: boolean | null;
};

/**
 * Force along the rollers for so many kilograms: rolling resistance on the weight across the line, less the part of
 * the weight along it where it falls (`fall` metres per metre towards the gap). Null where the kit gives no rolling
 * resistance.
 */
export function pushOf(kilograms: number, fall: number, rules: LaunchRules): Push | null {
  if (rules.rolling === undefined) {
    return null;
  }
  const angle = Math.atan(fall);
  const weight = kilograms * gravity;
  const resistance = rules.rolling * weight * Math.cos(angle);
  const along = weight * Math.sin(angle);
  const newtons = Math.max(0, resistance - along);
  const holdBack = Math.max(0, along - resistance);
  const most = Math.max(newtons, holdBack);
  return {
    newtons,
    holdBack,
    people: rules.push ? Math.ceil(most / rules.push.person) : null,
    vehicle: rules.push ? most <= rules.push.vehicle : null,
  };
}
