import { parentPort } from 'node:worker_threads';
import type { JobMessage, WorkerMessage } from './messages.ts';

/** How a job under way hears that it is no longer wanted, or wanted now, and says how far it is and what it found. */
export type ThreadWatch = {
  readonly shouldStop: () => boolean;
  readonly shouldTake: () => boolean;
  readonly onProgress: (done: number, of: number) => void;
  readonly onNews: (news: unknown) => void;
};

/** In a worker: does the jobs it is sent, one after the other. */
export function serveJobs<Job>(work: (job: Job, watch: ThreadWatch) => unknown): void {
  const port = parentPort;
  if (!port) throw new Error('this file runs in a worker');
  const say = (message: WorkerMessage) => port.postMessage(message);
  port.on('message', ({ id, job, stop }: JobMessage) => {
    const watch: ThreadWatch = {
      shouldStop: () => Atomics.load(stop, 0) === 1,
      shouldTake: () => Atomics.load(stop, 1) === 1,
      onProgress: (done, of) => say({ id, kind: 'progress', done, of }),
      onNews: (news) => say({ id, kind: 'news', news }),
    };
    try {
      say({ id, kind: 'done', value: work(job as Job, watch) });
    } catch (error) {
      say({ id, kind: 'failed', error });
    }
  });
}
