import { codeOf } from './errorCode.ts';

/**
 * SQLSTATEs (appendix A of the Postgres manual) of a database that cannot do it now and may do it later: connections,
 * resources such as disk and memory, locks not had in time, shutting down, failures of the system below it, a
 * password or a database that is not there, or takes nobody in, while an administrator is at work, a replica that only
 * reads.
 */
const SQLSTATES = /^(08|40|53|57P|58|28)[0-9A-Z]{2,3}$|^(55000|55P03|57014|3D000|25006)$/;

/** Of Node's sockets and name look-ups. */
const SOCKET_CODES: ReadonlySet<string> = new Set([
  'EAI_AGAIN',
  'ECONNABORTED',
  'ECONNREFUSED',
  'ECONNRESET',
  'EHOSTUNREACH',
  'ENETUNREACH',
  'ENOENT',
  'ENOTFOUND',
  'EPIPE',
  'ETIMEDOUT',
]);

/** The driver gives its own troubles no code. */
const DRIVER_WORDS =
  /Connection terminated|timeout exceeded when trying to connect|timeout expired|pool after calling end|connection error and is not queryable|Client was closed/i;

/** Whether an error means that the database cannot be used for a moment: nothing is wrong with what was asked. */
export function isUnavailable(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  const code = codeOf(error);
  return SQLSTATES.test(code) || SOCKET_CODES.has(code) || DRIVER_WORDS.test(error.message);
}
