// Bundles the server and its workers with esbuild and the pages with vite, once for each state of the sources.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ensureInstalled, root } from './install.mjs';

const dist = join(root, 'dist');
const shipped = [
  'domain',
  'shared',
  'server',
  'client',
  'package.json',
  'package-lock.json',
  'vite.config.ts',
];

/** Name, size and time of every source file: enough to know whether a bundle is still good, and quick to read. */
function stateOfSources() {
  const hash = createHash('sha256').update(process.versions.modules);
  const visit = (path) => {
    const about = statSync(path);
    if (about.isDirectory()) for (const name of readdirSync(path).sort()) visit(join(path, name));
    else hash.update(`${path}\0${about.size}\0${about.mtimeMs}\n`);
  };
  for (const name of shipped) if (existsSync(join(root, name))) visit(join(root, name));
  return hash.digest('hex');
}

async function bundleServer() {
  const { build } = await import('esbuild');
  const workers = join(root, 'server', 'workers');
  const entries = existsSync(workers)
    ? readdirSync(workers)
        .filter((name) => name.endsWith('.worker.ts'))
        .map((name) => ({ in: join(workers, name), out: basename(name, '.ts') }))
    : [];
  await build({
    absWorkingDir: root,
    entryPoints: [{ in: join(root, 'server', 'main.ts'), out: 'main' }, ...entries],
    outdir: join(dist, 'server'),
    bundle: true,
    platform: 'node',
    target: 'node20',
    format: 'esm',
    packages: 'external',
    sourcemap: true,
    logLevel: 'warning',
  });
}

async function bundlePages() {
  const { build } = await import('vite');
  // A test runner says "test" here, and the pages would carry React's slow build for development.
  const before = process.env.NODE_ENV;
  if (before === 'test') process.env.NODE_ENV = 'production';
  try {
    await build({
      root: join(root, 'client'),
      configFile: join(root, 'vite.config.ts'),
      logLevel: 'error',
    });
  } finally {
    if (before === 'test') process.env.NODE_ENV = before;
  }
}

/**
 * Builds what the sources need: all of it, or with `parts: 'server'` only what the command line runs.
 * @param {{ parts?: 'all' | 'server' }} [options]
 */
export async function ensureBuilt({ parts = 'all' } = {}) {
  const state = stateOfSources();
  const stale = (stamp) => !existsSync(stamp) || readFileSync(stamp, 'utf8') !== state;
  const serverStamp = join(dist, 'server.stamp');
  const pagesStamp = join(dist, 'client.stamp');
  const wanted = [];
  if (stale(serverStamp)) wanted.push([serverStamp, bundleServer]);
  if (parts === 'all' && stale(pagesStamp)) wanted.push([pagesStamp, bundlePages]);
  if (wanted.length === 0) return;
  if (parts === 'all') process.stderr.write('Building Spanwright ...\n');
  for (const [stamp, bundle] of wanted) {
    rmSync(stamp, { force: true });
    await bundle();
    writeFileSync(stamp, state);
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  ensureInstalled();
  await ensureBuilt();
}
