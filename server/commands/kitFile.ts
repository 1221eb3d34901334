import { createHash } from 'node:crypto';
import type { Fault } from '#domain/fault.ts';
import { readKit } from '#domain/kit/readKit.ts';
import { bad, good, type Result } from '#domain/result.ts';
import type { HashedKit } from '../kits.ts';
import { loadKits } from '../loadKits.ts';
import { places } from '../places.ts';
import type { CommandIo } from './io.ts';

/** The JSON of a file and its very text, or one fault that says why there is none. */
export async function readJson(
  path: string,
  io: CommandIo,
): Promise<Result<{ readonly json: unknown; readonly text: string }, Fault[]>> {
  const fault = (found: string, expected: string) => bad([{ file: path, found, expected }]);
  let text: string;
  try {
    text = await io.readFile(path);
  } catch (error) {
    return fault(reasonOf(error), 'a file that can be read');
  }
  try {
    return good({ json: JSON.parse(text), text });
  } catch (error) {
    return fault(reasonOf(error), 'JSON');
  }
}

/** A kit that comes with the program, by its name; or one from a file, by a path that ends in `.json`. */
export async function findKit(
  name: string,
  io: CommandIo,
): Promise<Result<HashedKit, readonly Fault[]>> {
  if (name.endsWith('.json')) {
    return kitFromFile(name, io);
  }
  const shipped = await loadKits(places.kits);
  if (!shipped.ok) {
    return shipped;
  }
  const kit = shipped.value.get(name);
  const known = [...shipped.value.keys()].join(', ');
  return kit
    ? good(kit)
    : bad([
        { file: '--kit', found: name, expected: `${known}, or the path of a kit file (.json)` },
      ]);
}

/** A kit from a file, with the hash of the file's text. */
export async function kitFromFile(
  path: string,
  io: CommandIo,
): Promise<Result<HashedKit, Fault[]>> {
  const read = await readJson(path, io);
  if (!read.ok) {
    return read;
  }
  const kit = readKit(read.value.json, path);
  if (!kit.ok) {
    return kit;
  }
  const hash = createHash('sha256').update(read.value.text, 'utf8').digest('hex');
  return good({ kit: kit.value, hash });
}

function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
