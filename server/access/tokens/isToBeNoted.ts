/** Noted at most this often: a write for each request would cost more than the request. */
const NOTED_EVERY_MS = 60_000;

/** Whether a session, a token or a logger that was last noted as seen then is to be noted again. */
export function isToBeNoted(lastSeenAt: Date | null): boolean {
  return lastSeenAt === null || Date.now() - lastSeenAt.getTime() > NOTED_EVERY_MS;
}
