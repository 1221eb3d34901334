import { type ScaleLinear, scaleLinear } from 'd3-scale';

/** A strip of ground under a launch as pixels: metres ahead of the front rollers, and above the near bank. */
export type StripView = {
  /** Prefix of ids inside this drawing. */
  readonly id: string;
  readonly width: number;
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
  /** First pixel of the strip, and where its ground ends. */
  readonly top: number;
  readonly bottom: number;
  /** Pixels per metre along the ground. */
  readonly scale: number;
  /** Room for words. */
  readonly wide: boolean;
};

type Ask = {
  readonly id: string;
  readonly width: number;
  /** Metres of ground drawn. */
  readonly reach: { readonly from: number; readonly to: number };
  /** Highest metre drawn: the girder on the higher bank. */
  readonly highest: number;
  readonly top: number;
  /** Pixels free over the girder, and pixels of ground below the near bank. */
  readonly above: number;
  readonly below: number;
  readonly wide: boolean;
};

/** Heights are drawn so many times taller than lengths: on a phone a girder would be a line. */
export function tallness(wide: boolean): number {
  return wide ? 1 : 2;
}

export function stripView({ id, width, reach, highest, top, above, below, wide }: Ask): StripView {
  const scale = width / (reach.to - reach.from);
  const up = scale * tallness(wide);
  const level = top + above + highest * up;
  const x = scaleLinear().domain([reach.from, reach.to]).range([0, width]);
  const y = scaleLinear()
    .domain([0, 1])
    .range([level, level - up]);
  return { id, width, x, y, top, bottom: level + below, scale, wide };
}
