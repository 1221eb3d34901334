// Runs one TypeScript file of tests/ with Node: bundles it first, since Node 20 does not read TypeScript.
import { basename, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureInstalled, root } from '../../server/start/install.mjs';

ensureInstalled();
const { build } = await import('esbuild');
const [file, ...rest] = process.argv.slice(2);
const outfile = join(root, 'dist', 'scripts', `${basename(file, '.ts')}.mjs`);
await build({
  absWorkingDir: root,
  entryPoints: [resolve(root, file)],
  outfile,
  bundle: true,
  platform: 'node',
  target: 'node20',
  format: 'esm',
  packages: 'external',
  sourcemap: 'inline',
  logLevel: 'warning',
});
process.argv.splice(1, process.argv.length, outfile, ...rest);
await import(pathToFileURL(outfile).href);
