// `npm test`: everything that must hold, in one go, from a bare checkout. The last line is the count.
import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { ensureInstalled, root } from '../../server/start/install.mjs';

ensureInstalled();
const { ensureBuilt } = await import('../../server/start/build.mjs');

const tool = (name) =>
  join(root, 'node_modules', '.bin', process.platform === 'win32' ? `${name}.cmd` : name);
const run = (name, args) =>
  spawnSync(tool(name), args, { cwd: root, stdio: 'inherit', shell: process.platform === 'win32' })
    .status === 0;

let passed = 0;
let failed = 0;
let skipped = 0;
const note = (title, good) => {
  process.stdout.write(`${good ? 'ok' : 'FAILED'}: ${title}\n`);
  if (good) passed += 1;
  else failed += 1;
};

note('lint and format (biome)', run('biome', ['check', '.']));
note('types of the whole tree', run('tsc', ['--noEmit']));
note('types of domain without Node or DOM', run('tsc', ['--noEmit', '-p', 'domain']));
note('no unused files, exports or packages (knip)', run('knip', []));

let built = true;
try {
  await ensureBuilt();
} catch (error) {
  built = false;
  process.stdout.write(`${error instanceof Error ? error.message : error}\n`);
}
note('server and pages build', built);

if (built) {
  const report = join(root, 'dist', 'tests.json');
  rmSync(report, { force: true });
  const only = process.argv.slice(2);
  const good = run('vitest', [
    'run',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
    ...only,
  ]);
  try {
    const counts = JSON.parse(readFileSync(report, 'utf8'));
    passed += counts.numPassedTests;
    failed += counts.numFailedTests;
    skipped += counts.numPendingTests + counts.numTodoTests;
    for (const { assertionResults } of counts.testResults)
      for (const { status, fullName } of assertionResults)
        if (status === 'skipped' || status === 'pending')
          process.stdout.write(`skipped: ${fullName}\n`);
    // A file that fails to load has no failed test of its own.
    if (!good && counts.numFailedTests === 0) failed += 1;
  } catch {
    process.stdout.write('FAILED: the tests left no report\n');
    failed += 1;
  }
}

process.stdout.write(`\n${passed} passed, ${failed} failed, ${skipped} skipped\n`);
process.exitCode = failed === 0 ? 0 : 1;
