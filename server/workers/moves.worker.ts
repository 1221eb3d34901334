import { movedOf, movesItOf } from './jobs.ts';
import type { MovesThreadJob } from './planner.ts';
import { serveJobs } from './serveJobs.ts';

serveJobs<MovesThreadJob>((job, watch) =>
  job.kind === 'moved' ? movedOf(job.job, watch) : movesItOf(job.job, watch),
);
