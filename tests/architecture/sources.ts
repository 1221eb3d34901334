import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../../', import.meta.url));

export type Source = { readonly path: string; readonly text: string };

/** Every source file below a top-level folder, with forward slashes and from the root. */
export function sourcesOf(folder: string): Source[] {
  return readdirSync(join(root, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.(ts|tsx|mjs)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .map((path) => ({
      path: relative(root, path).replaceAll('\\', '/'),
      text: readFileSync(path, 'utf8'),
    }));
}

/** What a source imports, statically, dynamically or by `new URL(..., import.meta.url)`. */
export function importsOf(source: Source): string[] {
  const found = source.text.matchAll(/(?:\bfrom\s+|\bimport\s+|\bimport\(\s*)(['"])([^'"]+)\1/g);
  return [...found].map((match) => match[2]!);
}

/** The top-level folder an import leads to, or null for a package. */
export function folderOf(source: Source, imported: string): string | null {
  if (imported.startsWith('#')) return imported.slice(1).split('/')[0]!;
  if (!imported.startsWith('.')) return null;
  const from = new URL(source.path, 'file:///');
  return new URL(imported, from).pathname.split('/')[1]!;
}
