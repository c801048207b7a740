import { CLOSE } from '../live/socket.ts';
import type { Link } from './link.ts';
import { LoggerShare, MOST_OF_ONE_LOGGER } from './loggerShare.ts';

/** The links of this process, by the logger at their other end. */
export class Links {
  readonly #all = new Map<string, Link>();
  readonly #byLogger = new Map<string, LoggerShare>();

  /** Answers what the logger has in all. Beyond the number of links that it may have, its oldest is closed. */
  signedIn(link: Link, loggerId: string): LoggerShare {
    const share = this.#byLogger.get(loggerId) ?? new LoggerShare();
    this.#byLogger.set(loggerId, share);
    share.links.add(link);
    if (share.links.size > MOST_OF_ONE_LOGGER.links) {
      const [oldest] = share.links;
      // It takes a moment to close: the next one that is too many is not to close it once more.
      share.links.delete(oldest);
      oldest.close(CLOSE.policy, 'This logger has newer links.');
    }
    return share;
  }

  add(link: Link): void {
    this.#all.set(link.id, link);
  }

  /** It is remembered until what it had received is settled. */
  remove(link: Link): void {
    void link.settled().then(() => this.#all.delete(link.id));
    for (const [loggerId, { links }] of this.#byLogger)
      if (links.delete(link) && links.size === 0) this.#byLogger.delete(loggerId);
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
