/**
 * What has already happened when a build is planned again or forecast from now. Minutes after the start of the build.
 * A task at work or stopped has `finish` absent; of a stopped one the share that `part` leaves is done later.
 */
export type PastTask = {
  readonly task: string;
  readonly status: 'done' | 'at-work' | 'stopped';
  readonly start: number;
  readonly finish?: number;
  /** Share of the task already done, 0 to 1, where a chief told it. */
  readonly part?: number;
  readonly crews: readonly { readonly crew: string; readonly people: number }[];
};

export type Past = {
  /** Minutes after the start of the build; nothing new starts before it. */
  readonly now: number;
  readonly tasks: readonly PastTask[];
};
