/** One instance of the single-mode benchmark sets, as its file states it: jobs 1 and n + 2 are source and sink. */
export type SmInstance = {
  readonly jobs: number;
  readonly durations: readonly number[];
  /** By job, from 0: the jobs after it. */
  readonly successors: readonly (readonly number[])[];
  readonly demands: readonly (readonly number[])[];
  readonly capacities: readonly number[];
};

/** Reads the numbers of an `.sm` file as they stand. Throws with the section that is missing or short. */
export function smInstance(text: string): SmInstance {
  const section = (title: string, skip: number): number[][] => {
    const lines = text.split('\n');
    const at = lines.findIndex((line) => line.startsWith(title));
    if (at < 0) throw new Error(`No section ${title}.`);
    const end = lines.findIndex((line, index) => index > at && line.startsWith('***'));
    return lines
      .slice(at + skip, end)
      .filter((line) => line.trim() !== '')
      .map((line) => line.trim().split(/\s+/).map(Number))
      .filter((row) => row.every(Number.isFinite));
  };
  const precedence = section('PRECEDENCE RELATIONS', 2);
  const requests = section('REQUESTS/DURATIONS', 2);
  const capacities = section('RESOURCEAVAILABILITIES', 2)[0];
  if (!capacities || precedence.length === 0 || precedence.length !== requests.length) {
    throw new Error('The sections do not agree on the number of jobs.');
  }
  return {
    jobs: precedence.length,
    successors: precedence.map((row) => row.slice(3).map((job) => job - 1)),
    durations: requests.map((row) => row[2]!),
    demands: requests.map((row) => row.slice(3)),
    capacities,
  };
}
