import { words } from './words.ts';

/**
 * Which vehicles a load class means, in plain words. A class is roughly the short tons of a tracked vehicle; the limits
 * here are common practice, no source. What counts is the sign on the vehicle itself, which the words beside it say.
 */
export function vehiclesOf(loadClass: number): string {
  const said = words.commander.loadClass.vehicles;
  if (loadClass < 4) return said.foot;
  if (loadClass < 9) return said.light;
  if (loadClass < 17) return said.lorry;
  if (loadClass < 31) return said.loaded;
  if (loadClass < 51) return said.heavy;
  if (loadClass < 81) return said.tank;
  return said.transporter;
}
