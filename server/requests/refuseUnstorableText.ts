import type { FastifyRequest } from 'fastify';
import type { FieldFault } from '../../ingest/decodeError.ts';
import { isStorable } from '../../ingest/storableText.ts';
import { InvalidInput, pointerOf } from './validation.ts';

declare module 'fastify' {
  interface FastifyContextConfig {
    /** The route looks at the text in its body itself: a large body is not walked twice. */
    checksOwnText?: boolean;
  }
}

/**
 * Refuses text that Postgres cannot hold as it was sent: U+0000 is an error there, and half a surrogate pair would be
 * silently replaced. Runs on every query and on every JSON body that a route reads, before its schema does: what it
 * reads nothing of is nobody's fault.
 */
export async function refuseUnstorableText(request: FastifyRequest): Promise<void> {
  const { schema, config } = request.routeOptions;
  const faults = schema?.querystring === undefined ? [] : unstorableText(request.query);
  if (schema?.body !== undefined && config.checksOwnText !== true)
    faults.push(...unstorableText(request.body));
  if (faults.length > 0) throw new InvalidInput(faults);
}

/** The places of a JSON document whose text cannot be stored. Keeps its own stack: depth cannot overflow it. */
function unstorableText(document: unknown): FieldFault[] {
  const faults: FieldFault[] = [];
  const left: { value: unknown; path: readonly PropertyKey[] }[] = [{ value: document, path: [] }];
  for (let next = left.pop(); next !== undefined; next = left.pop()) {
    const { value, path } = next;
    if (typeof value === 'string' && !isStorable(value))
      faults.push({ pointer: pointerOf(path), detail: 'Holds U+0000 or half a character.' });
    if (typeof value !== 'object' || value === null) continue;
    for (const [key, inner] of Object.entries(value)) {
      if (!isStorable(key))
        faults.push({ pointer: pointerOf(path), detail: 'A name holds U+0000 or half a character.' });
      if (typeof inner === 'string' || (typeof inner === 'object' && inner !== null))
        left.push({ value: inner, path: [...path, key] });
    }
  }
  return faults;
}
