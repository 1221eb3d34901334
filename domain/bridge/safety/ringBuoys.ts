const foot = 0.3048;

/** Most metres between two ring buoys, and least length of the line on each: 29 CFR 1926.106. */
const apart = 200 * foot;
const line = 90 * foot;

/** What stands by for rescue where work goes on over or near water. Metres. */
export type WaterRescue = {
  readonly buoys: number;
  readonly apart: number;
  readonly line: number;
  /** At least one boat, at once available. */
  readonly boats: 1;
};

/**
 * Ring buoys along so many metres over water, one at each end and none further than 200 ft from the next, each with at
 * least 90 ft of line, and a boat at once available (29 CFR 1926.106). None over dry ground.
 */
export function waterRescue(metres: number): WaterRescue | null {
  if (metres <= 0) {
    return null;
  }
  // A run measured in feet must not gain a buoy to rounding.
  return { buoys: Math.ceil(metres / apart - 1e-9) + 1, apart, line, boats: 1 };
}
