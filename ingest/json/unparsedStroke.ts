const UTF8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

/** One stroke of a large body in JSON, parsed when it is its turn. */
export class UnparsedStroke {
  readonly #bytes: Uint8Array;
  readonly #parseBody: () => unknown;

  /** `parseBody` parses all of the body, and throws for what is wrong with it. */
  constructor(bytes: Uint8Array, parseBody: () => unknown) {
    this.#bytes = bytes;
    this.#parseBody = parseBody;
  }

  /** Throws `DecodeError`, for the body as a whole, where this is no JSON in UTF-8. */
  parse(): unknown {
    try {
      return JSON.parse(UTF8.decode(this.#bytes));
    } catch (error) {
      this.#parseBody();
      throw error;
    }
  }
}
