// The `spanwright` command in a checkout: builds the server part when it must, then runs it.
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureBuilt } from './build.mjs';
import { ensureInstalled, root } from './install.mjs';

ensureInstalled();
await ensureBuilt({ parts: process.argv[2] === 'serve' ? 'all' : 'server' });
await import(pathToFileURL(join(root, 'dist', 'server', 'main.js')).href);
