import { randomUUID } from 'node:crypto';
import type { Warning } from '../../../analysis/warning.ts';
import { inScope } from '../../../server/database/openDatabase.ts';
import { type Mailer, smtpMailer } from '../../../server/mail/mailer.ts';
import { GATHER_S } from '../../../server/notices/enqueue.ts';
import type { Lane } from '../../../server/notices/lane.ts';
import { telling } from '../../../server/notices/startTelling.ts';
import { tellSilentLoggers } from '../../../server/notices/tellSilentLoggers.ts';
import { writeDigests } from '../../../server/notices/writeDigests.ts';
import { writeWarnings } from '../../../server/work/writing/writeWarnings.ts';
import { startMailServer, type TestMailServer } from '../../support/mailServer.ts';
import { type Member, startService, type TestService } from '../../support/service.ts';
import { type Fleet, newFleet } from '../strokes/strokeFixture.ts';

export const PUBLIC_URL = 'https://rooms.example.com';
export const MINUTE_MS = 60_000;
export const HOUR_MS = 60 * MINUTE_MS;

/** A service with a mail server, whose telling is done by hand and at any time. */
export interface Newsroom {
  readonly service: TestService;
  readonly mailServer: TestMailServer;
  /** What a process of its own would do at that moment, mails a minute later: it shares nothing with others but the database. */
  tellAt(ms: number, options?: { toPrivate?: boolean }): Promise<void>;
  /** What is done by the clock, at that moment. */
  lookAround(ms: number): Promise<void>;
  newMailer(): Mailer;
  /** The messages to an address, the earliest first. */
  mailsTo(email: string): string[];
  stop(): Promise<void>;
}

export async function startNewsroom(): Promise<Newsroom> {
  const mailServer = await startMailServer();
  const service = await startService({ worker: false, publicUrl: PUBLIC_URL, webhooksToPrivate: true });
  const newMailer = () => smtpMailer(mailServer.url, 'Slideload <rooms@example.com>');
  return {
    service,
    mailServer,
    newMailer,
    lookAround: async (ms) => {
      const { pool } = service.app.database;
      await tellSilentLoggers(inScope({ pool }, { spanning: 'notices' }).db, new Date(ms));
      await writeDigests({ pool }, new Date(ms));
    },
    tellAt: async (ms, { toPrivate = true } = {}) => {
      const now = new Date(ms);
      const mailer = newMailer();
      const { look, mails, webhooks } = telling({
        pool: service.app.database.pool,
        mailer,
        publicUrl: () => PUBLIC_URL,
        webhooksToPrivate: toPrivate,
        log: service.app.log,
        count: (channel, outcome) => service.app.metrics.notices.inc({ channel, outcome }),
      });
      await look(now);
      const gathered = new Date(ms + GATHER_S * 1000);
      await Promise.all([workThrough(mails, gathered), workThrough(webhooks, now)]);
      mailer.close();
    },
    mailsTo: (email) => mailServer.received.filter((mail) => mail.includes(`To: ${email}\r\n`)),
    stop: async () => {
      await service.stop();
      await mailServer.stop();
    },
  };
}

/** A dealer with a room, who is told of every warning. */
export interface Told {
  readonly dealer: Member;
  readonly fleet: Fleet;
  /** Writes all that an analysis of the room from its beginning would find now. */
  find(...warnings: Warning[]): Promise<void>;
  set(body: object, member?: Member): Promise<void>;
}

export async function newTold(
  service: TestService,
  wanted: object = { warningsFrom: 'watch' },
): Promise<Told> {
  const dealer = await service.newAccount();
  const fleet = await newFleet(service, dealer.token);
  const set: Told['set'] = async (body, member = dealer) => {
    const answer = await service.as(member.token, 'PATCH', '/settings/notices', body);
    if (answer.status !== 200) throw new Error(`The settings answered ${answer.status}: ${answer.text}`);
  };
  await set(wanted);
  const room = { accountId: dealer.person.accountId, roomId: fleet.roomId };
  return {
    dealer,
    fleet,
    set,
    find: async (...warnings) => {
      const folded = { from: null, warnings: new Map(warnings.map((one) => [one.id, one])) };
      await service.db.transaction().execute((trx) => writeWarnings(trx, [{ room, folded }]));
    },
  };
}

export function newWarning(more: Partial<Warning> = {}): Warning {
  return {
    id: randomUUID(),
    kind: 'rising-draw',
    severity: 'service',
    side: 'front',
    direction: null,
    position: null,
    pattern: null,
    openedAtMs: Date.now() - HOUR_MS,
    clearedAtMs: null,
    firstStrokeId: randomUUID(),
    latestStrokeId: randomUUID(),
    headline: 'The front side draws more than it did.',
    evidence: { risePercent: 20 },
    checks: ['Look at the rack.'],
    cautions: ['Keep everyone out of the travel.'],
    ...more,
  };
}

/** Does all that is due at a moment, and ends. */
async function workThrough<Piece>(lane: Lane<Piece>, now: Date): Promise<void> {
  const going = new AbortController();
  for (;;) {
    const pieces = await lane.claim(lane.places, now);
    if (pieces.length === 0) return;
    await Promise.all(pieces.map((piece) => lane.work(piece, now, going.signal)));
  }
}
