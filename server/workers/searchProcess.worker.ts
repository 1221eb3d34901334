import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { lowerPriority } from './lowPriority.ts';
import type { FromSearch, ToSearch } from './searchMessages.ts';
import { threadSearcher } from './threadSearcher.ts';

// A process of low priority that searches for its parent. The search runs in a thread, so that this one hears "stop".
lowerPriority();
const searcher = threadSearcher(dirname(fileURLToPath(import.meta.url)));
const running = new Map<number, { stop: AbortController; take: AbortController }>();
const say = (message: FromSearch) => process.send?.(message);

process.on('message', (message: ToSearch) => {
  const { id, kind } = message;
  if (kind !== 'search') {
    running.get(id)?.[kind].abort();
    return;
  }
  const controls = { stop: new AbortController(), take: new AbortController() };
  running.set(id, controls);
  searcher
    .search(message.job, {
      signal: controls.stop.signal,
      take: controls.take.signal,
      onProgress: (done, of) => say({ id, kind: 'progress', done, of }),
      onNews: (news) => say({ id, kind: 'news', news }),
    })
    .then(
      (value) => say({ id, kind: 'done', value }),
      (error: unknown) => say({ id, kind: 'failed', error }),
    )
    .finally(() => running.delete(id));
});
// Nobody is left to search for.
process.on('disconnect', () => process.exit());
