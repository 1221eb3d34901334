import { Readable } from 'node:stream';
import { promisify } from 'node:util';
import { createGzip, gzip } from 'node:zlib';
import type { App } from './site.ts';

/** Shorter than this, a reply fits one packet anyway. */
const worthwhile = 1400;

const compressible = /json|javascript|css|html|svg/;

const zip = promisify(gzip);

/**
 * Sends what is read with GET as gzip where the device takes it: a snapshot shrinks to a tenth, and links are thin.
 * Replies to POST may hold a link's secret and stay as they are.
 */
export function compressReplies(app: App): void {
  app.addHook('onSend', async (request, reply, payload: unknown) => {
    const type = String(reply.getHeader('content-type') ?? '');
    if (request.method !== 'GET' || !compressible.test(type)) return payload;
    reply.header('vary', 'accept-encoding');
    const accepts = /\bgzip\b/.test(String(request.headers['accept-encoding'] ?? ''));
    if (!accepts || reply.statusCode !== 200 || reply.hasHeader('content-encoding')) return payload;
    if (payload instanceof Readable) {
      zipped();
      return payload.pipe(createGzip());
    }
    if (typeof payload !== 'string' || payload.length < worthwhile) return payload;
    const packed = await zip(payload);
    zipped();
    return packed;

    function zipped(): void {
      reply.header('content-encoding', 'gzip').removeHeader('content-length');
    }
  });
}
