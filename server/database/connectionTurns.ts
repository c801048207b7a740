interface Waiting {
  readonly goOn: () => void;
}

/** SQLSTATE of too many connections: it may be asked again. */
const NONE_FREE = '53300';

/**
 * Lets those who ask for one of so many connections wait in turn. As long as others are served a burst of requests is
 * only slow, so each waits up to `mostMs`; where none was given back for `standStillMs`, as when the database does not
 * answer any more, it gives up. Times in milliseconds, by a clock that is never set back.
 */
export class ConnectionTurns {
  readonly #standStillMs: number;
  readonly #mostMs: number;
  readonly #waiting = new Set<Waiting>();
  #left: number;
  #givenBackMs = Number.NEGATIVE_INFINITY;

  constructor(connections: number, { standStillMs, mostMs }: { standStillMs: number; mostMs: number }) {
    this.#left = connections;
    this.#standStillMs = standStillMs;
    this.#mostMs = mostMs;
  }

  get waiting(): number {
    return this.#waiting.size;
  }

  /** Resolves, first come first served, once a connection is to be had; rejects where that takes too long. */
  take(): Promise<void> {
    if (this.#left > 0) {
      this.#left--;
      return Promise.resolve();
    }
    const askedMs = performance.now();
    return new Promise((resolve, reject) => {
      const untilMs = () =>
        Math.min(Math.max(askedMs, this.#givenBackMs) + this.#standStillMs, askedMs + this.#mostMs);
      const look = (): NodeJS.Timeout =>
        setTimeout(
          () => {
            if (performance.now() < untilMs()) {
              timer = look();
              return;
            }
            this.#waiting.delete(waiting);
            reject(
              Object.assign(new Error('No connection to the database became free.'), { code: NONE_FREE }),
            );
          },
          Math.max(1, untilMs() - performance.now()),
        );
      let timer = look();
      const waiting: Waiting = {
        goOn: () => {
          clearTimeout(timer);
          resolve();
        },
      };
      this.#waiting.add(waiting);
    });
  }

  /** A connection is free that somebody has used. */
  giveBack(): void {
    this.#givenBackMs = performance.now();
    this.giveBackUnused();
  }

  /** It was not to be had: nobody was served. */
  giveBackUnused(): void {
    const [next] = this.#waiting;
    if (next === undefined) {
      this.#left++;
      return;
    }
    this.#waiting.delete(next);
    next.goOn();
  }
}
