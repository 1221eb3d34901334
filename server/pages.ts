import { sep } from 'node:path';
import fastifyStatic from '@fastify/static';
import { refusal } from '#domain/refusal.ts';
import { refuse } from './refuse.ts';
import type { App } from './site.ts';

/** Serves the built pages from a folder; every address of a page gets the one page there is. */
export async function servePages(app: App, folder: string | undefined): Promise<void> {
  if (folder !== undefined) {
    await app.register(fastifyStatic, {
      root: folder,
      cacheControl: false,
      // Every file is a route of its own, so that anything else falls through to the handler below.
      wildcard: false,
      setHeaders: (reply, path) => {
        reply.header('cache-control', isHashed(path) ? hashedCaching : 'no-cache');
      },
    });
  }
  app.setNotFoundHandler((request, reply) => {
    const isPage = request.method === 'GET' && /^\/(b\/[^?]*)?(\?|$)/.test(request.url);
    if (folder !== undefined && isPage) return reply.sendFile('index.html');
    return refuse(reply, refusal('route-unknown', 'There is nothing at this address.'));
  });
}

/** Files whose name changes with their content. */
const hashedCaching = 'public, max-age=31536000, immutable';

function isHashed(path: string): boolean {
  return path.includes(`${sep}assets${sep}`);
}
