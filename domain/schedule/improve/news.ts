/** What a search tells while it runs: for each better plan and each higher bound. */
export type PlanNews = {
  /** Of the best plan so far. */
  readonly minutesToOpen: number;
  /** No plan with these crews can open earlier than this, in minutes. */
  readonly lowerBound: number;
  /** How many schedules were made: placements of one task each, divided by the number of tasks. */
  readonly schedules: number;
  /** True once the best plan opens at the bound: no faster order exists with these crews. */
  readonly proven: boolean;
};
