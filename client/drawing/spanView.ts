import { type ScaleLinear, scaleLinear } from 'd3-scale';
import type { SpanGeometry } from './spanGeometry.ts';

/** How the side view of a site becomes pixels. */
export type SpanView = {
  readonly geometry: SpanGeometry;
  /** Prefix of ids inside this drawing. */
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
  /** Pixels per metre along the ground. */
  readonly scale: number;
  /** Room for all words; without it only the few that matter. */
  readonly wide: boolean;
  /** Heights are drawn this many times taller than lengths. */
  readonly tall: number;
};

/** Below this width, in pixels, the drawing is the simplified one for phones. */
export const phone = 640;
const deepest = 420;

/** Fits the side view into a width, with `above` pixels free over the bridge. */
export function spanView(
  geometry: SpanGeometry,
  id: string,
  width: number,
  above: number,
): SpanView {
  const wide = width >= phone;
  const tall = wide ? 1 : 2;
  const length = geometry.to - geometry.from;
  const rise = geometry.highest - geometry.lowest;
  const scale = Math.min(width / length, deepest / (rise * tall));
  const below = wide ? 56 : 44;
  const left = (width - length * scale) / 2;
  const x = scaleLinear()
    .domain([geometry.from, geometry.to])
    .range([left, left + length * scale]);
  const top = above + 4;
  const y = scaleLinear()
    .domain([geometry.highest, geometry.lowest])
    .range([top, top + rise * scale * tall]);
  return { geometry, id, width, height: y(geometry.lowest) + below, x, y, scale, wide, tall };
}
