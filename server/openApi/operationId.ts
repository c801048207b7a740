import type { RouteOptions } from 'fastify';

const API = /^\/api\/v\d+/;

/**
 * A name for a route that programs made from the description call it by: `getRoomTrend` for `GET /api/v1/rooms/:id/trend`.
 * A POST that answers 201 creates one of what its address lists. A route may name itself (`operationId` of its schema).
 */
export function operationIdOf({ method, url, schema }: RouteOptions): string {
  const creates = method === 'POST' && Object.hasOwn(Object(schema?.response), 201);
  const parts = url.replace(API, '').split('/').slice(1);
  const named = parts.flatMap((part, i) => {
    if (part.startsWith(':')) return [];
    const next = parts[i + 1];
    const isOne = next?.startsWith(':') === true || (creates && next === undefined);
    return [capitalised(isOne ? singular(part) : part)];
  });
  return (creates ? 'create' : String(method).toLowerCase()) + named.join('');
}

function singular(word: string): string {
  if (word === 'people') return 'person';
  return word.replace(/(?<=ch)es$|s$/, '');
}

/** `password-resets` as `PasswordResets`. */
function capitalised(part: string): string {
  return part
    .split('-')
    .map((word) => word.charAt(0).toUpperCase() + word.slice(1))
    .join('');
}
