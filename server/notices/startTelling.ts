import type { FastifyBaseLogger } from 'fastify';
import { type Database, inScope } from '../database/openDatabase.ts';
import type { Mailer } from '../mail/mailer.ts';
import { rest } from '../rest.ts';
import { keepAtWork, LOOK_EVERY_MS } from './lane.ts';
import { mailLane } from './mailLane.ts';
import { tellRooms } from './tellRooms.ts';
import { webhookLane } from './webhookLane.ts';

/** What is under way when the service stops gets this long to end; then it is tried again by whoever works next. */
const LET_END_MS = 4000;

interface TellingParts extends Pick<Database, 'pool'> {
  readonly mailer: Mailer;
  /** What people reach the service at; empty: nobody knows. */
  readonly publicUrl: () => string;
  /** Webhooks may also lead to addresses that are not public. */
  readonly webhooksToPrivate: boolean;
  readonly log: FastifyBaseLogger;
  /** Told of each attempt. */
  readonly count: (channel: 'mail' | 'webhook', outcome: string) => void;
}

/** What looks for news and the two lanes that they go out by, none of which waits for another. */
export function telling({ pool, mailer, publicUrl, webhooksToPrivate, log, count }: TellingParts) {
  const { db } = inScope({ pool }, { spanning: 'notices' });
  return {
    look: (now: Date) => tellRooms(db, log, now),
    mails: mailLane({ db, mailer, publicUrl, count: (outcome) => count('mail', outcome) }),
    webhooks: webhookLane({
      db,
      toPrivate: webhooksToPrivate,
      count: (outcome) => count('webhook', outcome),
    }),
  };
}

/** Tells people and programs what there is to tell, until stopped. Any number of processes may do so at once. */
export function startTelling(parts: TellingParts): { stop(): Promise<void> } {
  const { log } = parts;
  const { look, mails, webhooks } = telling(parts);
  const stopping = new AbortController();
  const { signal } = stopping;
  const looking = async (): Promise<void> => {
    while (!signal.aborted) {
      await look(new Date()).catch((error: unknown) => log.error({ err: error }, 'Nothing can be told.'));
      await rest(LOOK_EVERY_MS, signal);
    }
  };
  const cut = new AbortController();
  const all = Promise.all([
    looking(),
    keepAtWork(mails, log, signal, cut.signal),
    keepAtWork(webhooks, log, signal, cut.signal),
  ]);
  return {
    stop: async () => {
      stopping.abort();
      const ended = new AbortController();
      await Promise.race([all, rest(LET_END_MS, ended.signal)]);
      ended.abort();
      cut.abort();
    },
  };
}
