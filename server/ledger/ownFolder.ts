import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { sqliteModule } from './sqliteModule.ts';

/**
 * Makes this process the only owner of a data folder until `release` or its end, however it ends: one process owns
 * the ledger. Resolves to null when another process owns it. The lock is the operating system's, held through an
 * open transaction, so that nothing stale is left behind by a process that was killed.
 */
export async function ownFolder(folder: string): Promise<{ release(): void } | null> {
  await mkdir(folder, { recursive: true });
  const { DatabaseSync } = await sqliteModule();
  const lock = new DatabaseSync(join(folder, 'owner.lock'));
  try {
    lock.exec('PRAGMA busy_timeout = 0; BEGIN EXCLUSIVE');
  } catch (error) {
    lock.close();
    if (error instanceof Error && /locked|busy/i.test(error.message)) return null;
    throw error;
  }
  return { release: () => lock.close() };
}
