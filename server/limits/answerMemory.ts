import { tooMuchAtOnce } from '../problems.ts';
import { Tally } from './tally.ts';

interface Waiting {
  readonly sender: string;
  readonly bytes: number;
  readonly begin: () => void;
}

/**
 * Counts the bytes of large answers that are on their way out of this process. Where there would be too many, or too
 * many of one sender's, an answer waits for others to be read; the only one goes, however large it is, and whoever has
 * none under way waits for no other answer of its own. What waits should not be made yet: it is not counted.
 */
export class AnswerMemory {
  readonly #mostBytes: number;
  readonly #waitMs: number;
  readonly #ofSender = new Tally();
  #waiting: Waiting[] = [];
  #bytes = 0;

  constructor(mostBytes: number, waitMs: number) {
    this.#mostBytes = mostBytes;
    this.#waitMs = waitMs;
  }

  /** Resolves with what is to be called once it was read; rejects with the 429 problem where its turn takes too long. */
  async take(sender: string, bytes: number): Promise<() => void> {
    if (this.#fits(sender, bytes)) this.#count(sender, bytes);
    else await this.#turn(sender, bytes);
    let left = false;
    return () => {
      if (left) return;
      left = true;
      this.#count(sender, -bytes);
      this.#next();
    };
  }

  #fits(sender: string, bytes: number): boolean {
    const own = this.#ofSender.of(sender);
    if (this.#bytes === 0) return true;
    return this.#bytes + bytes <= this.#mostBytes && (own === 0 || own + bytes <= this.#mostBytes / 2);
  }

  #count(sender: string, bytes: number): void {
    this.#bytes += bytes;
    this.#ofSender.add(sender, bytes);
  }

  #turn(sender: string, bytes: number): Promise<void> {
    return new Promise((resolve, reject) => {
      const timer = setTimeout(() => {
        this.#waiting = this.#waiting.filter((one) => one !== waiting);
        reject(tooMuchAtOnce());
      }, this.#waitMs);
      const waiting: Waiting = {
        sender,
        bytes,
        begin: () => {
          clearTimeout(timer);
          this.#count(sender, bytes);
          resolve();
        },
      };
      this.#waiting.push(waiting);
    });
  }

  /** First come first served, but none waits behind one that needs more. */
  #next(): void {
    const before = this.#waiting;
    this.#waiting = [];
    for (const one of before) {
      if (this.#fits(one.sender, one.bytes)) one.begin();
      else this.#waiting.push(one);
    }
  }
}
