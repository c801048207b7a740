import type { FastifyRequest } from 'fastify';
import fp from 'fastify-plugin';
import type { App } from '../appTypes.ts';
import { AnswerMemory } from './answerMemory.ts';
import { InPieces } from './inPieces.ts';
import type { Limits } from './limits.ts';
import { senderOf } from './senderOf.ts';

/** A long list or a trend. What is larger waits for others of its size. */
const SMALL_BYTES = 1024 * 1024;

declare module 'fastify' {
  interface FastifyRequest {
    /**
     * Waits for its turn to make an answer of about so many bytes, if that is a large one. Rejects with the 429 problem
     * where it takes too long. An answer that did not wait so waits once it is made.
     */
    holdAnswer(reply: FastifyReply, bytes: number): Promise<void>;
    leaveAnswer: (() => void) | null;
  }
}

/** Holds large answers to the memory that there is for them, and drops whoever asks for one and does not read it. */
export const limitAnswers = fp(async (app: App, limits: Limits) => {
  const memory = new AnswerMemory(limits.answerBytes, limits.waitMs);

  app.decorateRequest('leaveAnswer', null);
  app.decorateRequest('holdAnswer', async function hold(this: FastifyRequest, reply, bytes) {
    if (bytes <= SMALL_BYTES || this.leaveAnswer !== null) return;
    const leave = await memory.take(senderOf(this), bytes);
    this.leaveAnswer = leave;
    if (reply.raw.destroyed) leave();
    else reply.raw.once('close', leave);
  });

  app.addHook('onSend', async (request, reply, payload) => {
    const isBytes = typeof payload === 'string' || Buffer.isBuffer(payload);
    if (!isBytes || payload.length <= SMALL_BYTES || request.method === 'HEAD') return payload;
    await request.holdAnswer(reply, payload.length);
    const bytes = Buffer.from(payload);
    reply.header('content-length', bytes.length);
    const pieces = new InPieces(bytes, limits.answerStallMs, () => reply.raw.destroy());
    // What is left then is one piece: the rest is handed over.
    return pieces.once('close', () => request.leaveAnswer?.());
  });
});
