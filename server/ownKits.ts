import { existsSync } from 'node:fs';
import { mkdir, open, rename } from 'node:fs/promises';
import { join } from 'node:path';
import type { Fault } from '#domain/fault.ts';
import type { Kit } from '#domain/kit/kit.ts';
import { refusal } from '#domain/refusal.ts';
import { bad, good, type Result } from '#domain/result.ts';
import type { RefusalReply } from '#shared/wire.ts';
import type { HashedKit, Kits } from './kits.ts';
import { StorageFailure } from './ledger/storageFailures.ts';
import { hashOf, loadKits } from './loadKits.ts';

/** Keeps the text of a kit file under its name. Rejects when the storage fails. */
export type KeepKit = (name: string, text: string) => Promise<void>;

/** Keeps kit files in a folder: whole and on the disk when it resolves, or not there at all. */
export function keepKitsIn(folder: string): KeepKit {
  return async (name, text) => {
    await mkdir(folder, { recursive: true });
    const unfinished = join(folder, `${name}.json.part`);
    const file = await open(unfinished, 'w');
    try {
      await file.writeFile(text, 'utf8');
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(unfinished, join(folder, `${name}.json`));
  };
}

/** The kits of a server, and the way to add one that this server's builds have taught. */
export class KitShelf {
  readonly #kits: Map<string, HashedKit>;
  readonly #keep: KeepKit;
  readonly #adding = new Set<string>();

  /** `kits` are those there are now; it adds to them. */
  constructor(kits: Map<string, HashedKit>, keep: KeepKit) {
    this.#kits = kits;
    this.#keep = keep;
  }

  get kits(): Kits {
    return this.#kits;
  }

  /** Adds a kit under a name that is free. Rejects when it could not be kept: then it is not here either. */
  async add(kit: Kit): Promise<Result<HashedKit, RefusalReply>> {
    const { name } = kit;
    if (this.#kits.has(name) || this.#adding.has(name)) {
      const sentence = `There is a kit "${name}" here already. Choose another name for the copy.`;
      return bad(refusal('kit-exists', sentence, [name]));
    }
    const text = `${JSON.stringify(kit, null, 2)}\n`;
    this.#adding.add(name);
    try {
      await this.#keep(name, text);
    } catch (error) {
      throw new StorageFailure('the kit could not be kept', { cause: error });
    } finally {
      this.#adding.delete(name);
    }
    const added = { kit, hash: hashOf(text) };
    this.#kits.set(name, added);
    return good(added);
  }
}

/**
 * The kits of the program and the own ones of a folder, which need not exist. Files that are no good are named in
 * `faults`; then none of the folder is used, and the program's are. A kit of the program keeps its name.
 */
export async function withOwnKits(
  kits: Kits,
  folder: string,
): Promise<{ readonly kits: Map<string, HashedKit>; readonly faults: readonly Fault[] }> {
  if (!existsSync(folder)) return { kits: new Map(kits), faults: [] };
  const own = await loadKits(folder);
  if (!own.ok) return { kits: new Map(kits), faults: own.reason };
  return { kits: new Map([...own.value, ...kits]), faults: [] };
}
