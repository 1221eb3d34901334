import type { FastifyReply } from 'fastify';
import { refusal } from '#domain/refusal.ts';
import { refuse } from '../refuse.ts';

/** Answers that there is no such build. */
export function buildUnknown(reply: FastifyReply): FastifyReply {
  return refuse(
    reply,
    refusal('build-unknown', 'There is no such build here. Open the page of your link again.'),
  );
}
