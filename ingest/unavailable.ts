import { codeOf } from './errorCode.ts';

/**
 * SQLSTATEs (appendix A of the Postgres manual) of a database that cannot do it now and may do it later: no connection, no
 * disk or memory left, a lock that was not had in time, shutting down, a failure of the system below it, a replica that only
 * reads. While an administrator is at work, also a password or a database that is not there, or one that takes nobody in.
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
