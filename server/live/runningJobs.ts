/** Long jobs under way that somebody may stop by their id. */
export class RunningJobs {
  readonly #jobs = new Map<string, { readonly build: string; readonly stop: AbortController }>();

  /** Marks a job as begun; null when the id is taken. The caller says `end` when it is over. */
  begin(build: string, id: string): AbortController | null {
    if (this.#jobs.has(id)) return null;
    const stop = new AbortController();
    this.#jobs.set(id, { build, stop });
    return stop;
  }

  /** It is over, whatever became of it. */
  end(id: string): void {
    this.#jobs.delete(id);
  }

  /** Stops a job; false when none of that id is under way for the build. */
  stop(build: string, id: string): boolean {
    const job = this.#jobs.get(id);
    if (job?.build !== build) return false;
    job.stop.abort();
    return true;
  }
}
