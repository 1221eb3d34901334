// Plain JavaScript on Node's own modules: this runs before anything is installed.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../../', import.meta.url));

const stampFile = join(root, 'node_modules', '.spanwright-installed');

/** Installs the exact versions of the lock file when they are not there yet. Says so on standard error. */
export function ensureInstalled() {
  const wanted = createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .update(process.versions.modules)
    .digest('hex');
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === wanted) return;
  process.stderr.write('Installing what Spanwright needs (once) ...\n');
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  const result = spawnSync(npm, ['ci', '--no-fund', '--no-audit', '--loglevel=error'], {
    cwd: root,
    stdio: ['ignore', 'ignore', 'inherit'],
    shell: process.platform === 'win32',
  });
  if (result.status !== 0) {
    process.stderr.write(
      'npm ci failed: check that this machine reaches an npm registry, then try again.\n',
    );
    process.exit(1);
  }
  writeFileSync(stampFile, wanted);
}
