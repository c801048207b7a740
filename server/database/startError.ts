/** Why the service cannot start, in one line for whoever starts it. */
export class StartError extends Error {
  override readonly name = 'StartError';
}
