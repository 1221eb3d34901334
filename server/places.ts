import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Where the program lies: the nearest folder above this file with a package.json, bundled or not. */
function findRoot(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'package.json'))) {
    const above = dirname(folder);
    if (above === folder) throw new Error('the program was taken out of its folder');
    folder = above;
  }
  return folder;
}

const root = findRoot();

export const places = {
  pages: join(root, 'dist', 'client'),
  workers: join(root, 'dist', 'server'),
  kits: join(root, 'domain', 'kits'),
} as const;

/** The version that package.json names. */
export function programVersion(): string {
  const about = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
  return about.version;
}
