import { forecastOf } from './jobs.ts';
import { serveJobs } from './serveJobs.ts';

serveJobs(forecastOf);
