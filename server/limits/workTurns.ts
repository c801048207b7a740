/**
 * Lets bodies be parsed and worked on in turn: their objects take several times their bytes. Those that are worked on
 * at once have at most so many bytes together, or are one.
 */
export class WorkTurns {
  readonly #mostBytes: number;
  readonly #waiting: { readonly bytes: number; readonly begin: () => void }[] = [];
  #bytes = 0;

  constructor(mostBytes: number) {
    this.#mostBytes = mostBytes;
  }

  /** Resolves, first come first served, with what is to be called once the work is done. */
  async take(bytes: number): Promise<() => void> {
    if (this.#waiting.length > 0 || !this.#fits(bytes))
      await new Promise<void>((begin) => {
        this.#waiting.push({ bytes, begin });
      });
    else this.#bytes += bytes;
    let left = false;
    return () => {
      if (left) return;
      left = true;
      this.#bytes -= bytes;
      this.#next();
    };
  }

  #fits(bytes: number): boolean {
    return this.#bytes === 0 || this.#bytes + bytes <= this.#mostBytes;
  }

  #next(): void {
    for (let [next] = this.#waiting; next !== undefined && this.#fits(next.bytes); [next] = this.#waiting) {
      this.#waiting.shift();
      this.#bytes += next.bytes;
      next.begin();
    }
  }
}
