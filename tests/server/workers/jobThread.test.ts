import { getEventListeners } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, expect, it } from 'vitest';
import { JobThread } from '#server/workers/jobThread.ts';

const folder = mkdtempSync(join(tmpdir(), 'spanwright-thread-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A worker that answers with its thread's number, and dies of the word "die". */
const file = join(folder, 'mortal.mjs');
writeFileSync(
  file,
  `import { parentPort, threadId } from 'node:worker_threads';
   parentPort.on('message', ({ id, job }) => {
     if (job === 'die') process.exit(3);
     parentPort.postMessage({ id, kind: 'done', value: [job, threadId] });
   });`,
);

it('a thread that dies fails the job that killed it, and the next job gets a new thread', async () => {
  const thread = new JobThread(pathToFileURL(file));
  const [, first] = (await thread.run('one')) as [string, number];
  const killer = thread.run('die');
  const after = thread.run('two');
  await expect(killer).rejects.toThrow('ended with 3');
  const [word, second] = (await after) as [string, number];
  expect(word).toBe('two');
  expect(second).not.toBe(first);
  await thread.close();
});

it('jobs leave nothing behind on a signal that outlives them', async () => {
  const thread = new JobThread(pathToFileURL(file));
  const { signal } = new AbortController();
  for (let count = 0; count < 5; count += 1) await thread.run(count, { signal });
  expect(getEventListeners(signal, 'abort')).toHaveLength(0);
  await thread.close();
});

it('a closed thread fails what it was doing', async () => {
  const endless = join(folder, 'endless.mjs');
  writeFileSync(
    endless,
    `import { parentPort } from 'node:worker_threads'; parentPort.on('message', () => { for (;;); });`,
  );
  const thread = new JobThread(pathToFileURL(endless));
  const job = expect(thread.run('anything')).rejects.toThrow('closed');
  await thread.close();
  await job;
});
