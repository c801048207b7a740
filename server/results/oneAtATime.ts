/**
 * Runs pieces of work one after the other. For work that holds one database connection while it waits for another: any
 * number of them at once could hold them all.
 */
export class OneAtATime {
  #last: Promise<unknown> = Promise.resolve();

  run<Result>(work: () => Promise<Result>): Promise<Result> {
    const result = this.#last.then(work);
    // Its failure is its own caller's, not the next one's.
    this.#last = result.catch(() => undefined);
    return result;
  }
}
