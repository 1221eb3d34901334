import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** What an answer of the server said. */
export type SiteAnswer<Body> = { readonly status: number; readonly json: Body };

/** The built server in a process of its own, on a data folder of its own. */
export type Site = {
  readonly origin: string;
  /** The host's secret of this start. */
  readonly host: string;
  /** Sends one request; `secret` null sends no link. */
  ask<Body>(
    method: 'GET' | 'POST' | 'DELETE',
    path: string,
    secret: string | null,
    body?: unknown,
  ): Promise<SiteAnswer<Body>>;
  /** Ends the process at once, as a power cut would. */
  kill(): Promise<void>;
  /** Starts again on the same data and port, after `kill`. Links of builds stay, the host gets a new one. */
  startAgain(): Promise<void>;
  /** Stops the server as Ctrl-C or a service manager would and removes its data. Throws unless it ended well. */
  stop(): Promise<void>;
};

type Running = {
  readonly child: ChildProcess;
  readonly origin: string;
  readonly host: string;
  readonly ended: Promise<number | null>;
  readonly said: () => string;
};

const root = fileURLToPath(new URL('../../', import.meta.url));
const patience = 30_000;

/** Starts the server that was built in `dist` on a free port of this machine. */
export async function startSite(): Promise<Site> {
  const data = await mkdtemp(join(tmpdir(), 'spanwright-site-'));
  let running = await start(data, '0');
  return {
    get origin() {
      return running.origin;
    },
    get host() {
      return running.host;
    },
    ask: async (method, path, secret, body) => {
      const reply = await fetch(running.origin + path, {
        method,
        headers: {
          ...(secret === null ? {} : { authorization: `Bearer ${secret}` }),
          ...(body === undefined ? {} : { 'content-type': 'application/json' }),
        },
        ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      });
      const text = await reply.text();
      return { status: reply.status, json: text === '' ? undefined : JSON.parse(text) };
    },
    kill: async () => {
      running.child.kill('SIGKILL');
      await running.ended;
    },
    startAgain: async () => {
      running = await start(data, new URL(running.origin).port);
    },
    stop: async () => {
      running.child.kill('SIGTERM');
      const code = await running.ended;
      await rm(data, { recursive: true, force: true });
      if (code !== 0) throw new Error(`The server ended with ${code}:\n${running.said()}`);
    },
  };
}

async function start(data: string, port: string): Promise<Running> {
  const main = join(root, 'dist', 'server', 'main.js');
  const args = [main, 'serve', '--data', data, '--port', port];
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] });
  // A run that is broken off must not leave its server behind.
  const end = (): void => void child.kill('SIGKILL');
  process.once('exit', end);
  let said = '';
  let late: NodeJS.Timeout | undefined;
  const ended = once(child, 'exit').then(([code]) => {
    process.off('exit', end);
    return code as number | null;
  });
  const link = new Promise<{ origin: string; host: string }>((resolve, reject) => {
    const hear = (piece: Buffer): void => {
      said += piece.toString('utf8');
      const [, origin, host] = /^host +(http:\/\/[^/\s]+)\/#(\S+)$/m.exec(said) ?? [];
      if (origin && host) resolve({ origin, host });
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    void ended.then((code) => reject(new Error(`The server ended with ${code}:\n${said}`)));
    late = setTimeout(() => {
      child.kill('SIGKILL');
      reject(new Error(`The server was not up after ${patience} ms:\n${said}`));
    }, patience);
  });
  const { origin, host } = await link.finally(() => clearTimeout(late));
  return { child, origin, host, ended, said: () => said };
}
