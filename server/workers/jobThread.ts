import { Worker } from 'node:worker_threads';
import type { JobMessage, WorkerMessage } from './messages.ts';

/** How a job is followed and stopped. `take` asks for the best found so far, from jobs that know such a thing. */
export type ThreadOptions = {
  readonly signal?: AbortSignal;
  readonly take?: AbortSignal;
  readonly onProgress?: (done: number, of: number) => void;
  readonly onNews?: (news: unknown) => void;
};

type Waiting = {
  readonly id: number;
  readonly job: unknown;
  readonly stop: Int32Array<SharedArrayBuffer>;
  readonly options: ThreadOptions;
  readonly resolve: (value: unknown) => void;
  readonly reject: (reason: unknown) => void;
};

/**
 * One worker thread and the jobs that wait for it. The thread starts with the first job; if it dies, the job that
 * killed it fails and the next one gets a new thread.
 */
export class JobThread {
  readonly #file: URL;
  readonly #waiting: Waiting[] = [];
  #current: Waiting | null = null;
  #worker: Worker | null = null;
  #lastId = 0;

  constructor(file: URL) {
    this.#file = file;
  }

  /** Does a job. Rejects with the signal's reason as soon as it is stopped, and with the worker's error. */
  async run(job: unknown, options: ThreadOptions = {}): Promise<unknown> {
    const { signal, take } = options;
    signal?.throwIfAborted();
    let stopped = () => {};
    let taken = () => {};
    const done = new Promise((resolve, reject) => {
      this.#lastId += 1;
      const stop = new Int32Array(new SharedArrayBuffer(8));
      const waiting = { id: this.#lastId, job, stop, options, resolve, reject };
      stopped = () => {
        // A job under way notices between two of its steps; its answer is then nobody's.
        Atomics.store(stop, 0, 1);
        const place = this.#waiting.indexOf(waiting);
        if (place >= 0) this.#waiting.splice(place, 1);
        reject(signal?.reason);
      };
      taken = () => void Atomics.store(stop, 1, 1);
      if (take?.aborted) taken();
      this.#waiting.push(waiting);
      this.#next();
    });
    // A signal outlives many jobs: none leaves its listener behind.
    signal?.addEventListener('abort', stopped, { once: true });
    take?.addEventListener('abort', taken, { once: true });
    try {
      return await done;
    } finally {
      signal?.removeEventListener('abort', stopped);
      take?.removeEventListener('abort', taken);
    }
  }

  async close(): Promise<void> {
    const worker = this.#worker;
    this.#worker = null;
    await worker?.terminate();
    this.#fail(new Error('the worker was closed'));
  }

  #next(): void {
    if (this.#current) return;
    const next = this.#waiting.shift();
    if (!next) {
      // An idle thread keeps no process alive.
      this.#worker?.unref();
      return;
    }
    this.#current = next;
    this.#worker ??= this.#start();
    this.#worker.ref();
    const { id, job, stop } = next;
    this.#worker.postMessage({ id, job, stop } satisfies JobMessage);
  }

  #start(): Worker {
    const worker = new Worker(this.#file);
    worker.on('message', (message: WorkerMessage) => this.#heard(message));
    const died = (error: unknown) => {
      if (this.#worker !== worker) return;
      this.#worker = null;
      this.#fail(error);
      this.#next();
    };
    worker.on('error', died);
    worker.on('exit', (code) => died(new Error(`the worker ended with ${code}`)));
    return worker;
  }

  #heard(message: WorkerMessage): void {
    const current = this.#current;
    if (current?.id !== message.id) return;
    if (message.kind === 'progress') {
      if (!current.options.signal?.aborted) current.options.onProgress?.(message.done, message.of);
      return;
    }
    if (message.kind === 'news') {
      if (!current.options.signal?.aborted) current.options.onNews?.(message.news);
      return;
    }
    this.#current = null;
    if (message.kind === 'done') current.resolve(message.value);
    else current.reject(message.error);
    this.#next();
  }

  #fail(error: unknown): void {
    this.#current?.reject(error);
    this.#current = null;
  }
}
