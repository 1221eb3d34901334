import { choiceOf } from './jobs.ts';
import { serveJobs } from './serveJobs.ts';

serveJobs(choiceOf);
