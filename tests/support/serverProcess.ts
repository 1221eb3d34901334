import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { secretOf } from './server.ts';

const program = join(fileURLToPath(new URL('../..', import.meta.url)), 'dist', 'server', 'main.js');

export type ServerProcess = {
  readonly origin: string;
  readonly hostSecret: string;
  /** What it printed, line by line. */
  readonly lines: readonly string[];
  ask(
    method: 'GET' | 'POST' | 'DELETE',
    path: string,
    secret: string,
    body?: unknown,
  ): Promise<{ readonly status: number; readonly text: string }>;
  /** Sends a signal and resolves to how the process ended. */
  stop(signal: 'SIGKILL' | 'SIGTERM' | 'SIGINT'): Promise<number | NodeJS.Signals>;
};

/** Starts the built server as users do. Resolves once it listens; rejects with what it printed when it does not. */
export async function startServer(args: readonly string[]): Promise<ServerProcess> {
  const child = spawn(process.execPath, [program, 'serve', ...args], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const ended = once(child, 'exit') as Promise<[number | null, NodeJS.Signals | null]>;
  const lines: string[] = [];
  const origin = await firstLines(child, lines, ended);
  const host = lines.find((line) => line.startsWith('host')) ?? '';
  return {
    origin,
    hostSecret: secretOf(host),
    lines,
    ask: async (method, path, secret, body) => {
      const response = await fetch(`${origin}${path}`, {
        method,
        headers: {
          authorization: `Bearer ${secret}`,
          ...(body !== undefined && { 'content-type': 'application/json' }),
        },
        ...(body !== undefined && { body: JSON.stringify(body) }),
      });
      return { status: response.status, text: await response.text() };
    },
    stop: async (signal) => {
      child.kill(signal);
      const [code, by] = await ended;
      return by ?? code ?? 0;
    },
  };
}

async function firstLines(
  child: ChildProcess,
  lines: string[],
  ended: Promise<unknown>,
): Promise<string> {
  let errors = '';
  child.stderr?.on('data', (piece) => {
    errors += piece;
  });
  const listening = new Promise<string>((resolve) => {
    let rest = '';
    child.stdout?.on('data', (piece) => {
      rest += piece;
      const whole = rest.split('\n');
      rest = whole.pop() ?? '';
      lines.push(...whole);
      const [, origin] = /^Spanwright \S+ at (\S+)/.exec(lines[0] ?? '') ?? [];
      if (origin && lines.some((line) => line.startsWith('host'))) resolve(origin);
    });
  });
  const failed = ended.then((how) => {
    throw new Error(`the server ended (${how}) and said: ${errors || lines.join('\n')}`);
  });
  return Promise.race([listening, failed]);
}
