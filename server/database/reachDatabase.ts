import { OperatorError } from '../operatorError.ts';

/** The first question. Throws `OperatorError` with one clear line when the database does not answer or let us in. */
export function reachDatabase<Answer>(ask: () => Promise<Answer>): Promise<Answer> {
  return ask().catch((cause: unknown) => {
    throw databaseUnusable(cause);
  });
}

export function databaseUnusable(cause: unknown): OperatorError {
  return new OperatorError(`The database at DATABASE_URL cannot be used: ${reasonOf(cause)}.`, { cause });
}

/** Trying several addresses of one name fails with an error that holds one for each. */
function reasonOf(error: unknown): string {
  const [first] = error instanceof AggregateError ? error.errors : [error];
  return first instanceof Error ? first.message.replace(/\.$/, '') : String(first);
}
