import type { FastifyReply } from 'fastify';
import type { Refusal } from '#domain/refusal.ts';
import { refusalStatus } from '#shared/refusals.ts';
import type { RefusalReply } from '#shared/wire.ts';

/** Answers with a refusal and the status that goes with its code. */
export function refuse(reply: FastifyReply, reason: Refusal | RefusalReply): FastifyReply {
  return reply.code(refusalStatus[reason.code]).send(reason);
}
