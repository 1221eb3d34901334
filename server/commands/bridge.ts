import { parseArgs } from 'node:util';
import { readGround } from '#domain/bridge/readGround.ts';
import { bridgeAnswer } from './bridgeAnswer.ts';
import { bridgeText } from './bridgeText.ts';
import { faultLine } from './faultLine.ts';
import type { CommandIo } from './io.ts';
import { findKit, readJson } from './kitFile.ts';

const usage = 'spanwright bridge GROUND.json --kit NAME [--json]';

/**
 * `spanwright bridge`: the bridge of a kit that answers a ground, in words or as JSON. Resolves to the exit code: 0
 * done, 2 bad input or no bridge possible, each fault and each limit on its own line.
 */
export async function run(args: string[], io: CommandIo): Promise<number> {
  const { values, positionals, wrong } = parse(args);
  const [file, ...more] = positionals;
  if (wrong !== undefined || file === undefined || more.length > 0 || values.kit === undefined) {
    return fail(io, wrong === undefined ? [usage] : [wrong, usage]);
  }
  const read = await readJson(file, io);
  const ground = read.ok ? readGround(read.value.json, file) : read;
  const found = await findKit(values.kit, io);
  if (!ground.ok || !found.ok) {
    const faults = [...(ground.ok ? [] : ground.reason), ...(found.ok ? [] : found.reason)];
    return fail(io, faults.map(faultLine));
  }
  const { kit, hash } = found.value;
  const answer = bridgeAnswer(ground.value, kit, hash);
  if (!answer.ok) {
    return fail(
      io,
      answer.reason.map(({ sentence }) => sentence),
    );
  }
  const lines = values.json
    ? [JSON.stringify(answer.value, null, 2)]
    : bridgeText(answer.value, ground.value);
  for (const line of lines) {
    io.out(line);
  }
  return 0;
}

type Parsed = {
  readonly values: { readonly kit?: string | undefined; readonly json?: boolean | undefined };
  readonly positionals: readonly string[];
  readonly wrong?: string;
};

function parse(args: string[]): Parsed {
  const options = { kit: { type: 'string' }, json: { type: 'boolean' } } as const;
  try {
    return parseArgs({ args, allowPositionals: true, options });
  } catch (error) {
    const wrong = error instanceof Error ? error.message : String(error);
    return { values: {}, positionals: [], wrong };
  }
}

function fail(io: CommandIo, lines: readonly string[]): number {
  for (const line of lines) {
    io.err(line);
  }
  return 2;
}
