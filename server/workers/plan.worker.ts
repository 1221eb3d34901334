import { planOf } from './jobs.ts';
import { serveJobs } from './serveJobs.ts';

serveJobs(planOf);
