import type { FastifyError } from 'fastify';
import type { Fault } from '#domain/fault.ts';
import { refusal } from '#domain/refusal.ts';
import type { RefusalReply } from '#shared/wire.ts';
import { StorageFailure } from './ledger/storageFailures.ts';
import { refuse } from './refuse.ts';
import type { App } from './site.ts';

/** Thrown by the validator of a route; carries what is wrong with the request. */
export class FormWrong extends Error {
  override readonly name = 'FormWrong';
  readonly faults: readonly Fault[];

  constructor(faults: readonly Fault[]) {
    super('the request is not as it should be');
    this.faults = faults;
  }
}

/** Every error leaves as a refusal with a sentence; what nobody expected is logged, and told without its details. */
export function answerErrors(app: App): void {
  app.setErrorHandler((error: FastifyError, request, reply) => {
    const reason = reasonOf(error);
    if (reason.code === 'server-failed' || reason.code === 'storage-failed') {
      request.log.error({ err: error }, reason.code);
    }
    return refuse(reply, reason);
  });
}

function reasonOf(error: FastifyError): RefusalReply {
  if (error instanceof FormWrong) {
    const sentence = 'The request is not as it should be. Mend what the faults name.';
    return { ...refusal('form-wrong', sentence), faults: [...error.faults] };
  }
  if (error instanceof StorageFailure) {
    const sentence = 'It could not be kept just now, so nothing was changed. Send the same again.';
    return refusal('storage-failed', sentence);
  }
  switch (error.statusCode) {
    case 400:
    case 415:
      return refusal('form-wrong', 'The request is not JSON that can be read. Send JSON as UTF-8.');
    case 413:
      return refusal('too-large', 'The request is too large. Send less at once.');
    case 429:
      return refusal('too-many-requests', 'Too many requests from this link. Wait a minute.');
    default:
      return refusal('server-failed', 'The server failed. Send the same again; the log says more.');
  }
}
