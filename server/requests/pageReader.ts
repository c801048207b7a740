import type { FastifyReply, FastifyRequest } from 'fastify';
import { sendMissingPage } from '../drawing/sendPage.ts';
import { answerProblem, problemOf } from './errorHandler.ts';
import { preferredType } from './preferredType.ts';
import { isForMachines } from './readableAddress.ts';

/** What a person is shown and a program is told, in the order in which they count where both are wanted alike. */
const FORMS = ['application/problem+json', 'text/html'] as const;

/** Whether it is a person at a browser who asks, and not for what only programs read. */
export function readsPages({ method, url, headers }: FastifyRequest): boolean {
  return (
    ['GET', 'HEAD'].includes(method) &&
    !isForMachines(url) &&
    preferredType(headers.accept, FORMS) === 'text/html'
  );
}

/** Shows whoever reads pages that there is nothing at the address; every other error is answered as a problem. */
export function answerError(
  error: unknown,
  request: FastifyRequest,
  reply: FastifyReply,
): FastifyReply | Promise<FastifyReply> {
  if (problemOf(error).problem !== 'not-found' || !readsPages(request))
    return answerProblem(error, request, reply);
  // Where the pages are not built it is a problem like any other.
  return sendMissingPage(reply).catch((missing: unknown) => answerProblem(missing, request, reply));
}
