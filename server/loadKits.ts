import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Fault } from '#domain/fault.ts';
import { readKit } from '#domain/kit/readKit.ts';
import { bad, good, type Result } from '#domain/result.ts';
import type { HashedKit, Kits } from './kits.ts';

/** Reads every kit file of a folder; files of other formats lie beside them. A kit's hash is the sha256 of its text, in hex. */
export async function loadKits(folder: string): Promise<Result<Kits, readonly Fault[]>> {
  const kits = new Map<string, HashedKit>();
  const faults: Fault[] = [];
  const files = (await readdir(folder)).filter((name) => name.endsWith('.json')).sort();
  for (const file of files) {
    const text = await readFile(join(folder, file), 'utf8');
    const json = parsed(text);
    if ((json as { format?: unknown } | undefined)?.format === 'spanwright-ground') continue;
    const read = readKit(json, file);
    if (!read.ok) faults.push(...read.reason);
    else kits.set(read.value.name, { kit: read.value, hash: hashOf(text) });
  }
  return faults.length === 0 ? good(kits) : bad(faults);
}

/** The hash of a kit file's text, as records name it. */
export function hashOf(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('hex');
}

/** What is no JSON is no kit either: the reader of kits says so with its file. */
function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
