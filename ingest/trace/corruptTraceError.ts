/** Stored bytes are not a trace that this version can read: damaged, cut short or of a later version. */
export class CorruptTraceError extends Error {
  constructor(why: string) {
    super(`A stored trace cannot be read: ${why}.`);
    this.name = 'CorruptTraceError';
  }
}
