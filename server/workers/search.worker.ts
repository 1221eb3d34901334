import { lowerThreadPriority } from './lowPriority.ts';
import { searchOf } from './searchJob.ts';
import { serveJobs } from './serveJobs.ts';

lowerThreadPriority();
serveJobs(searchOf);
