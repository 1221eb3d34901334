import { scaleLinear } from 'd3-scale';

/** One milestone still to come. Minutes after the start of the build. */
export type MilestoneAhead = {
  readonly task: string;
  /** What stands above its spread. */
  readonly label: string;
  readonly p10: number;
  readonly p50: number;
  readonly p80: number;
  readonly p90: number;
};

export type MilestoneRow = {
  readonly task: string;
  readonly label: string;
  /** Where its label begins, or ends when `anchor` says so. */
  readonly labelX: number;
  readonly anchor: 'start' | 'end';
  readonly p10: number;
  readonly p50: number;
  readonly p80: number;
  readonly p90: number;
};

export type MilestoneRows = {
  /** Across: minutes after the start. */
  readonly x: (minute: number) => number;
  readonly from: number;
  readonly to: number;
  readonly rows: readonly MilestoneRow[];
};

/**
 * Milestones one below the other on one line of time, each under its own label: the label begins where the spread does
 * and, where the paper ends before it would, stands to the left of its end. Pixels; `letter` is a letter's width.
 */
export function layMilestones(
  milestones: readonly MilestoneAhead[],
  now: number,
  width: number,
  letter: number,
): MilestoneRows {
  const from = Math.min(now, ...milestones.map(({ p10 }) => p10));
  const to = Math.max(from + 10, ...milestones.map(({ p90 }) => p90));
  const x = scaleLinear()
    .domain([from, to])
    .range([8, width - 8]);
  const rows = milestones
    .toSorted((one, other) => one.p50 - other.p50 || one.p90 - other.p90)
    .map(({ task, label, p10, p50, p80, p90 }): MilestoneRow => {
      const [begins, ends] = [x(p10), x(p90)];
      const wide = label.length * letter;
      const spread = { task, label, p10: begins, p50: x(p50), p80: x(p80), p90: ends };
      if (begins + wide <= width) return { ...spread, labelX: begins, anchor: 'start' };
      if (ends - wide >= 0) return { ...spread, labelX: ends, anchor: 'end' };
      return { ...spread, labelX: 0, anchor: 'start' };
    });
  return { x: (minute) => x(minute), from, to, rows };
}
