import type { Seen } from './seen.ts';

/** One thing that could be done, or happen, and what the build then looks like. */
export type Lever = {
  readonly kind:
    | 'people'
    | 'truck-earlier'
    | 'lights'
    | 'hold-prepared'
    | 'slow-case'
    | 'vehicle-wait'
    | 'vehicle-winch';
  /** The crew, load or task that it is about; absent for light and the vehicle. */
  readonly of?: string;
  /** "Two more people in Left girder". */
  readonly words: string;
  /** Something that one would do to open earlier, not a mishap. */
  readonly help: boolean;
  readonly change: (seen: Seen) => Seen;
};

/** How far each lever is pulled. Minutes and people. */
export type LeverSizes = {
  readonly people: number;
  readonly truckEarlier: number;
  /** Until another push vehicle is there. */
  readonly vehicleWait: number;
  /** A move by winch takes so many times as long. */
  readonly winch: number;
};

/** Common practice, no source: the leader sets what is true of the site. */
export const usualSizes: LeverSizes = { people: 2, truckEarlier: 30, vehicleWait: 45, winch: 2.5 };

const small = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six'];

/** A small number in words that open a sentence. */
export function numberWord(count: number): string {
  return small[count] ?? String(count);
}
