import { readFile } from 'node:fs/promises';
import type { CommandIo, RunCommand } from './commands/io.ts';

const commands: Record<string, () => Promise<{ run: RunCommand }>> = {
  serve: () => import('./commands/serve.ts'),
  plan: () => import('./commands/plan.ts'),
  bridge: () => import('./commands/bridge.ts'),
  kit: () => import('./commands/kit.ts'),
  schema: () => import('./commands/schema.ts'),
  record: () => import('./commands/record.ts'),
};

const io: CommandIo = {
  out: (line) => process.stdout.write(`${line}\n`),
  err: (line) => process.stderr.write(`${line}\n`),
  readFile: (path) => readFile(path, 'utf8'),
};

// A reader that closes early (`... | head`) has what it wanted.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

/** `spanwright <command> ...`: resolves to the exit code. */
async function main([name = '', ...args]: string[]): Promise<number> {
  const load = Object.hasOwn(commands, name) ? commands[name] : undefined;
  if (!load) {
    io.err(`spanwright ${Object.keys(commands).join(' | ')}`);
    return 2;
  }
  try {
    const { run } = await load();
    return await run(args, io);
  } catch (error) {
    io.err(error instanceof Error ? (error.stack ?? error.message) : String(error));
    return 1;
  }
}

process.exitCode = await main(process.argv.slice(2));
