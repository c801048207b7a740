/** The command cannot be done as it was given; the message is one line for whoever gave it. */
export class CommandError extends Error {
  override readonly name = 'CommandError';
}
