import { parentPort } from 'node:worker_threads';
import type { JobWatch } from './jobs.ts';
import type { JobMessage, WorkerMessage } from './messages.ts';

/** In a worker: does the jobs it is sent, one after the other. */
export function serveJobs<Job>(work: (job: Job, watch: JobWatch) => unknown): void {
  const port = parentPort;
  if (!port) throw new Error('this file runs in a worker');
  const say = (message: WorkerMessage) => port.postMessage(message);
  port.on('message', ({ id, job, stop }: JobMessage) => {
    const watch: JobWatch = {
      shouldStop: () => Atomics.load(stop, 0) === 1,
      onProgress: (done, of) => say({ id, kind: 'progress', done, of }),
    };
    try {
      say({ id, kind: 'done', value: work(job as Job, watch) });
    } catch (error) {
      say({ id, kind: 'failed', error });
    }
  });
}
