import { tooMuchAtOnce } from '../problems.ts';

interface Waiting {
  readonly held: HeldBody;
  readonly goOn: () => void;
  readonly giveUp: () => void;
}

/**
 * Counts the bytes of bodies that are being received or worked on in this process. Where they are too many, or too
 * many of one sender's, reading stops until others have left; the oldest body always goes on, so that none waits for
 * another that waits for it.
 */
export class BodyMemory {
  readonly #mostBytes: number;
  readonly #waitMs: number;
  /** Oldest first, as are each sender's. */
  readonly #all = new Set<HeldBody>();
  readonly #ofSender = new Map<string, { readonly bodies: Set<HeldBody>; bytes: number }>();
  #waiting: Waiting[] = [];
  #bytes = 0;

  constructor(mostBytes: number, waitMs: number) {
    this.#mostBytes = mostBytes;
    this.#waitMs = waitMs;
  }

  /** `sender` is whoever the bytes are held against. */
  begin(sender: string): HeldBody {
    const held = new HeldBody(this, sender);
    this.#all.add(held);
    const own = this.#ofSender.get(sender) ?? { bodies: new Set(), bytes: 0 };
    own.bodies.add(held);
    this.#ofSender.set(sender, own);
    return held;
  }

  count({ sender }: HeldBody, bytes: number): void {
    this.#bytes += bytes;
    const own = this.#ofSender.get(sender);
    if (own !== undefined) own.bytes += bytes;
  }

  mayGoOn(held: HeldBody): boolean {
    if (first(this.#all) === held) return true;
    const own = this.#ofSender.get(held.sender);
    if (own === undefined || this.#bytes > this.#mostBytes) return false;
    return own.bytes <= this.#mostBytes / 2 || first(own.bodies) === held;
  }

  /** Resolves once it may go on; rejects with the 429 problem where that takes too long. */
  wait(held: HeldBody): Promise<void> {
    return new Promise((resolve, reject) => {
      const timer = setTimeout(() => waiting.giveUp(), this.#waitMs);
      const waiting: Waiting = {
        held,
        goOn: () => {
          clearTimeout(timer);
          resolve();
        },
        giveUp: () => {
          clearTimeout(timer);
          this.#waiting = this.#waiting.filter((other) => other !== waiting);
          reject(tooMuchAtOnce());
        },
      };
      this.#waiting.push(waiting);
    });
  }

  leave(held: HeldBody): void {
    if (!this.#all.delete(held)) return;
    this.count(held, -held.bytes);
    const own = this.#ofSender.get(held.sender);
    own?.bodies.delete(held);
    if (own?.bodies.size === 0) this.#ofSender.delete(held.sender);
    for (const waiting of this.#waiting.filter((one) => one.held === held)) waiting.giveUp();
    const before = this.#waiting;
    this.#waiting = before.filter((one) => !this.mayGoOn(one.held));
    const stillWait = new Set(this.#waiting);
    for (const one of before) if (!stillWait.has(one)) one.goOn();
  }
}

/** One body's part of it, from its first byte to the answer. */
export class HeldBody {
  readonly sender: string;
  readonly #memory: BodyMemory;
  #bytes = 0;

  constructor(memory: BodyMemory, sender: string) {
    this.#memory = memory;
    this.sender = sender;
  }

  get bytes(): number {
    return this.#bytes;
  }

  /** Counts bytes that came. Null: read on; otherwise when to, or the 429 problem. */
  add(bytes: number): Promise<void> | null {
    this.#bytes += bytes;
    this.#memory.count(this, bytes);
    return this.#memory.mayGoOn(this) ? null : this.#memory.wait(this);
  }

  leave(): void {
    this.#memory.leave(this);
  }
}

function first<T>(set: ReadonlySet<T>): T | undefined {
  const [one] = set;
  return one;
}
