// `npm start`: installs, builds, opens the demo build and serves it, in one process so that Ctrl-C reaches it.

import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureBuilt } from './build.mjs';
import { ensureInstalled, root } from './install.mjs';

ensureInstalled();
await ensureBuilt();
process.argv.splice(2, 0, 'serve', '--demo');
await import(pathToFileURL(join(root, 'dist', 'server', 'main.js')).href);
