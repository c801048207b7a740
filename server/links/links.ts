import { CLOSE } from '../live/socket.ts';
import type { Link } from './link.ts';

/** A board that lost its link begins a new one: the old ones may hang until they are dropped for their silence. */
const MOST_OF_ONE_LOGGER = 4;

/** The links of this process, by the logger at their other end. */
export class Links {
  readonly #all = new Map<string, Link>();
  readonly #byLogger = new Map<string, Set<Link>>();

  /** Beyond the number that a logger may have, its oldest is closed. */
  signedIn(link: Link, loggerId: string): void {
    const ofLogger = this.#byLogger.get(loggerId) ?? new Set();
    this.#byLogger.set(loggerId, ofLogger.add(link));
    if (ofLogger.size <= MOST_OF_ONE_LOGGER) return;
    const [oldest] = ofLogger;
    // It takes a moment to close: the next one that is too many is not to close it once more.
    ofLogger.delete(oldest);
    oldest.close(CLOSE.policy, 'This logger has newer links.');
  }

  add(link: Link): void {
    this.#all.set(link.id, link);
  }

  /** It is remembered until what it had received is settled. */
  remove(link: Link): void {
    void link.settled().then(() => this.#all.delete(link.id));
    for (const [loggerId, ofLogger] of this.#byLogger)
      if (ofLogger.delete(link) && ofLogger.size === 0) this.#byLogger.delete(loggerId);
  }

  /** A link of another process learns it from the database, with its next piece. */
  takenOver(linkId: string, key: string): void {
    this.#all.get(linkId)?.takenOver(key);
  }

  /** Resolves once everything that was received is settled. */
  async settled(): Promise<void> {
    await Promise.all([...this.#all.values()].map((link) => link.settled()));
  }
}
