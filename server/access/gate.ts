import type { FastifyRequest } from 'fastify';
import type { Role } from '#domain/progress/command.ts';
import { type Refusal, refusal } from '#domain/refusal.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { refuse } from '../refuse.ts';
import type { App } from '../site.ts';
import { type Caller, callerOf } from './caller.ts';

/** Who may use a route: everyone without a link, or the carriers of these links. */
type Callers = 'anyone' | readonly (Role | 'host')[];

/** Unknown links that one address may try: a secret cannot be guessed, but trying costs the server work. */
const guessesPerMinute = 120;

export const everyRole: readonly Role[] = ['leader', 'log', 'chief', 'inspector', 'commander'];

declare module 'fastify' {
  interface FastifyContextConfig {
    callers?: Callers;
  }
  interface FastifyRequest {
    /** Set on every route that asks for a link. */
    caller: Caller | null;
  }
}

/**
 * Checks the link of every request to the API before anything else of it is read. A route that does not say who may
 * use it cannot be registered. Needs the rate limiter to be registered before it.
 */
export function guardRoutes(app: App, ledger: Ledger): void {
  app.decorateRequest('caller', null);

  const guesses = app.createRateLimit({
    max: guessesPerMinute,
    timeWindow: 60_000,
    keyGenerator: ({ ip }) => `guesses ${ip}`,
  });

  async function tooManyGuesses(request: FastifyRequest): Promise<Refusal | null> {
    const limit = await guesses(request);
    if (limit.isAllowed || !limit.isExceeded) return null;
    return refusal('too-many-requests', 'Too many unknown links from here. Wait a minute.');
  }

  app.addHook('onRoute', ({ url, method, config }) => {
    if (url.startsWith('/api') && config?.callers === undefined) {
      throw new Error(`${method} ${url} does not say who may use it`);
    }
  });

  app.addHook('onRequest', async (request, reply) => {
    const { callers } = request.routeOptions.config;
    if (callers === undefined || callers === 'anyone') return;
    const found = await callerOf(ledger, request.headers.authorization);
    if (!found.ok) return refuse(reply, (await tooManyGuesses(request)) ?? found.reason);
    request.caller = found.value;
    const reason = whyNot(found.value, callers, buildIn(request));
    if (reason) return refuse(reply, reason);
  });
}

function buildIn({ params }: FastifyRequest): string | undefined {
  return (params as { build?: string } | undefined)?.build;
}

function whyNot(
  caller: Caller,
  callers: Exclude<Callers, 'anyone'>,
  build: string | undefined,
): Refusal | null {
  // Also when that build exists: a link tells nothing about other builds.
  if (caller.kind === 'member' && build !== undefined && build !== caller.build) {
    return refusal('build-unknown', 'This link is not for that build. Open the page of your link.');
  }
  const role = caller.kind === 'host' ? 'host' : caller.author.role;
  if (callers.includes(role)) return null;
  return refusal(
    'role-cannot',
    `This is for ${callers.map((who) => roleWords[who]).join(', ')}. Your link is for ${roleWords[role]}.`,
  );
}

const roleWords: Record<Role | 'host', string> = {
  leader: 'the leader',
  log: 'the log keeper',
  chief: 'a crew chief',
  inspector: 'the inspector',
  commander: 'the commander',
  host: 'the host of this server',
};

/** The caller of a route that only members of a build may use. */
export function memberOf(request: FastifyRequest): Extract<Caller, { kind: 'member' }> {
  if (request.caller?.kind !== 'member')
    throw new Error('the route let somebody in without a link');
  return request.caller;
}
