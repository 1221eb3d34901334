import { lowerPriority, threadsHavePriority } from './lowPriority.ts';
import { searchOf } from './searchJob.ts';
import { serveJobs } from './serveJobs.ts';

if (threadsHavePriority) lowerPriority();
serveJobs(searchOf);
