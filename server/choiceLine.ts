import type { Bridge } from '#domain/bridge/bridge.ts';
import type { Choice } from '#domain/bridge/choices.ts';

/** One bridge of the choice in one line: its figures without its stages and parts. */
export type ChoiceLine = Omit<Choice, 'bridge'> &
  Pick<Bridge, 'bays' | 'length' | 'nose' | 'roomNeeded' | 'bearing' | 'loadClass'>;

export function choiceLine({ bridge, ...rest }: Choice): ChoiceLine {
  const { bays, length, nose, roomNeeded, bearing, loadClass } = bridge;
  return { bays, length, nose, roomNeeded, bearing, loadClass, ...rest };
}
