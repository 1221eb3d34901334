/**
 * To a worker: one job. `stop` is shared memory: its first number turns 1 when the job is no longer wanted, its second
 * when the best found so far is wanted now.
 */
export type JobMessage = {
  readonly id: number;
  readonly job: unknown;
  readonly stop: Int32Array<SharedArrayBuffer>;
};

/** From a worker, about the job of that id. */
export type WorkerMessage =
  | { readonly id: number; readonly kind: 'progress'; readonly done: number; readonly of: number }
  | { readonly id: number; readonly kind: 'news'; readonly news: unknown }
  | { readonly id: number; readonly kind: 'done'; readonly value: unknown }
  | { readonly id: number; readonly kind: 'failed'; readonly error: unknown };
