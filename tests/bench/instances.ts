import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { type SmInstance, smInstance } from '#tests/support/smInstance.ts';

/** An instance of a benchmark folder with what the table beside the folder knows of it. */
export type Listed = {
  readonly name: string;
  readonly instance: SmInstance;
  readonly criticalPath?: number;
  readonly bestKnown?: number;
};

/** Every `.sm` file of a folder, by name, with `DIR.csv` beside it where there is one. */
export function listInstances(folder: string): Listed[] {
  const dir = folder.replace(/\/+$/, '');
  const known = new Map<string, { criticalPath: number; bestKnown: number }>();
  if (existsSync(`${dir}.csv`)) {
    for (const line of readFileSync(`${dir}.csv`, 'utf8').split('\n').slice(1)) {
      const [name, criticalPath, , best] = line.split(',');
      if (name && best) {
        known.set(name, { criticalPath: Number(criticalPath), bestKnown: Number(best) });
      }
    }
  }
  return readdirSync(dir)
    .filter((file) => file.endsWith('.sm'))
    .sort()
    .map((file) => {
      const name = basename(file, '.sm');
      return {
        name,
        instance: smInstance(readFileSync(join(dir, file), 'utf8')),
        ...known.get(name),
      };
    });
}
