import type { FastifyRequest } from 'fastify';

/** A time with an offset whose `+` was sent as it is: in a query that stands for a space. */
const SPACED_OFFSET = /^(\d{4}-\d{2}-\d{2}[Tt]\d{2}:\d{2}:\d{2}(?:\.\d{1,20})?) (\d{2}:\d{2})$/;

/**
 * Makes of every query what its sender means, before its schema looks at it: a parameter without a value counts as left
 * out, as forms and templates of addresses send those that nobody filled in, and a time keeps its `+`.
 */
export async function tidyQuery({ query }: FastifyRequest): Promise<void> {
  if (typeof query !== 'object' || query === null) return;
  for (const [name, sent] of Object.entries(query)) {
    const values = [sent].flat().filter((value: unknown) => value !== '');
    if (values.length === 0) Reflect.deleteProperty(query, name);
    else Reflect.set(query, name, values.length === 1 ? withPlus(values[0]) : values.map(withPlus));
  }
}

function withPlus(value: unknown): unknown {
  return typeof value === 'string' ? value.replace(SPACED_OFFSET, '$1+$2') : value;
}
