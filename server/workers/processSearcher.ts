import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import type { Refusal } from '#domain/refusal.ts';
import type { Result } from '#domain/result.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { Searcher, SearchOptions } from './searcher.ts';
import type { FromSearch, ToSearch } from './searchMessages.ts';

type Waiting = {
  readonly options: SearchOptions;
  readonly resolve: (value: Result<Plan, Refusal>) => void;
  readonly reject: (reason: unknown) => void;
};

/**
 * Searches in a process of low priority, for platforms where a thread cannot have one. The process starts with the first
 * search; when it dies, the searches it had fail and the next one gets a new process. `folder` holds the bundled workers.
 */
export function processSearcher(folder: string): Searcher {
  const waiting = new Map<number, Waiting>();
  let child: ChildProcess | null = null;
  let lastId = 0;

  function started(): ChildProcess {
    const next = fork(join(folder, 'searchProcess.worker.js'), { serialization: 'advanced' });
    next.on('message', (message: FromSearch) => heard(message));
    next.on('exit', (code) => {
      if (child === next) child = null;
      for (const { reject } of waiting.values()) reject(new Error(`the search ended with ${code}`));
      waiting.clear();
    });
    return next;
  }

  function heard(message: FromSearch): void {
    const one = waiting.get(message.id);
    if (!one) return;
    if (message.kind === 'progress') one.options.onProgress?.(message.done, message.of);
    else if (message.kind === 'news') one.options.onNews?.(message.news);
    else {
      waiting.delete(message.id);
      if (message.kind === 'done') one.resolve(message.value);
      else one.reject(message.error);
    }
  }

  return {
    search: async (job, options = {}) => {
      const { signal, take } = options;
      signal?.throwIfAborted();
      lastId += 1;
      const id = lastId;
      child ??= started();
      const to = child;
      const say = (message: ToSearch) => void (to.connected && to.send(message));
      const taken = () => say({ id, kind: 'take' });
      let stopped = () => {};
      const done = new Promise<Result<Plan, Refusal>>((resolve, reject) => {
        stopped = () => {
          waiting.delete(id);
          say({ id, kind: 'stop' });
          reject(signal?.reason);
        };
        waiting.set(id, { options, resolve, reject });
        say({ id, kind: 'search', job });
        if (take?.aborted) taken();
      });
      signal?.addEventListener('abort', stopped, { once: true });
      take?.addEventListener('abort', taken, { once: true });
      try {
        return await done;
      } finally {
        signal?.removeEventListener('abort', stopped);
        take?.removeEventListener('abort', taken);
      }
    },
    close: async () => {
      const running = child;
      child = null;
      if (!running) return;
      const ended = once(running, 'exit');
      running.kill();
      await ended;
    },
  };
}
