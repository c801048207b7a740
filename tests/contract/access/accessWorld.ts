import { randomBytes, randomUUID } from 'node:crypto';
import { v7 as newId } from 'uuid';
import { newToken } from '../../../server/access/tokens/tokens.ts';
import { newSessionOf } from '../../support/newSessionOf.ts';
import type { Member, TestService } from '../../support/service.ts';

/** Every kind of caller that a route may meet. */
export const CALLERS = [
  'nobody',
  'badToken',
  'expiredSession',
  'logger',
  'otherLogger',
  'dealer',
  'technician',
  'owner',
  'grantedTechnician',
  'endedTechnician',
  'grantedOwner',
  'otherDealer',
] as const;
export type CallerName = (typeof CALLERS)[number];

const PEOPLE = [
  'dealer',
  'technician',
  'owner',
  'grantedTechnician',
  'endedTechnician',
  'grantedOwner',
  'otherDealer',
] as const;
export type People = Readonly<Record<(typeof PEOPLE)[number], Member>>;

/** One coach of the dealer with one of everything, and the grants to it. */
export interface Things {
  readonly name: string;
  readonly coach: string;
  readonly room: string;
  readonly logger: string;
  readonly loggerToken: string;
  readonly otherLoggerToken: string;
  readonly stroke: string;
  readonly service: string;
  readonly warning: string;
  readonly grant: string;
  readonly person: string;
  readonly session: string;
  readonly invitation: string;
  readonly webhook: string;
  remove(): Promise<void>;
}

export async function newPeople(service: TestService): Promise<People> {
  const dealer = await service.newAccount();
  return {
    dealer,
    technician: await service.newMember(dealer, 'technician'),
    owner: await service.newMember(dealer, 'owner'),
    grantedTechnician: await service.newAccount(),
    endedTechnician: await service.newAccount(),
    grantedOwner: await service.newAccount(),
    otherDealer: await service.newAccount(),
  };
}

export async function newThings(service: TestService, people: People): Promise<Things> {
  const { db } = service;
  const account_id = people.dealer.person.accountId;
  const name = `Coach ${randomUUID()}`;
  const ids = Array.from({ length: 9 }, () => newId());
  const [coach, otherCoach, room, logger, work, warning, grant, person, webhook] = ids;
  const coaches = [coach, otherCoach].map((id) => ({ account_id, id, name }));
  await db.insertInto('coaches').values(coaches).execute();
  const ofRoom = { account_id, id: room, coach_id: coach, name };
  await db
    .insertInto('rooms')
    .values({ ...ofRoom, drive: 'cable', sides: ['main'] })
    .execute();
  const [own, other] = [newToken('logger', account_id), newToken('logger', account_id)];
  const ofLogger = { account_id, name, sensor: 'clamp' } as const;
  await db
    .insertInto('loggers')
    .values([
      { ...ofLogger, id: logger, coach_id: coach, token_hash: own.hash },
      { ...ofLogger, id: newId(), coach_id: otherCoach, token_hash: other.hash },
    ])
    .execute();
  const sent = await service.as(own.text, 'POST', '/strokes', strokeOf(room));
  const stroke: string = sent.body.results[0].strokeId;
  const at = new Date();
  await db
    .insertInto('services')
    .values({
      account_id,
      id: work,
      room_id: room,
      kind: 'cleaned',
      at,
      recorded_by: people.dealer.person.id,
    })
    .execute();
  const texts = { evidence: '{}', checks: '[]', cautions: '[]', headline: name };
  const strokes = { first_stroke_id: stroke, latest_stroke_id: stroke };
  const told = { kind: 'rising-draw', severity: 'watch', opened_at: at } as const;
  await db
    .insertInto('warnings')
    .values({ account_id, id: warning, room_id: room, ...told, ...strokes, ...texts })
    .execute();
  const past = new Date(at.getTime() - 1000);
  const ofGrant = { account_id, coach_id: coach };
  const grantTo = ({ person: to, email }: Member) => ({ ...ofGrant, person_id: to.id, email });
  await db
    .insertInto('grants')
    .values([
      { ...grantTo(people.grantedTechnician), id: grant, role: 'technician' },
      { ...grantTo(people.endedTechnician), id: newId(), role: 'technician', until: past },
      { ...grantTo(people.grantedOwner), id: newId(), role: 'owner' },
    ])
    .execute();
  const ofPerson = { account_id, id: person, email: `${person}@example.com`, name, role: 'owner' } as const;
  await db.insertInto('people').values(ofPerson).execute();
  const invitation = newToken('invitation', account_id);
  await db
    .insertInto('invitations')
    .values({
      account_id,
      token_hash: invitation.hash,
      person_id: person,
      expires_at: new Date(Date.now() + 1e6),
    })
    .execute();
  const url = 'https://programs.example.com/news';
  await db
    .insertInto('webhooks')
    .values({
      account_id,
      id: webhook,
      url,
      events: ['logger.silent'],
      severity: 'stop',
      secret: randomBytes(32),
    })
    .execute();
  await newSessionOf(service, people.dealer.person);
  const session = await db
    .selectFrom('sessions')
    .select('id')
    .where('person_id', '=', people.dealer.person.id)
    .orderBy('id', 'desc')
    .executeTakeFirstOrThrow();
  return {
    name,
    coach,
    room,
    logger,
    loggerToken: own.text,
    otherLoggerToken: other.text,
    stroke,
    service: work,
    warning,
    grant,
    person,
    session: session.id,
    invitation: invitation.text,
    webhook,
    remove: async () => {
      await db.deleteFrom('webhooks').where('account_id', '=', account_id).execute();
      await db.deleteFrom('coaches').where('account_id', '=', account_id).execute();
      await db.deleteFrom('people').where('account_id', '=', account_id).where('id', '=', person).execute();
    },
  };
}

export function strokeOf(roomId: string) {
  const side = { side: 'main', rateHz: 10, amps: [0, 9, 8, 8, 0] };
  return {
    key: randomBytes(8).toString('hex'),
    roomId,
    direction: 'extend',
    startedAt: '2026-05-02T16:20:11Z',
    sides: [side],
  };
}

/** A session of its own for each request: some end it. */
export async function tokenFor(
  service: TestService,
  people: People,
  things: Things,
  caller: CallerName,
): Promise<string | undefined> {
  switch (caller) {
    case 'nobody':
      return undefined;
    case 'badToken':
      return newToken('person', people.dealer.person.accountId).text;
    case 'logger':
      return things.loggerToken;
    case 'otherLogger':
      return things.otherLoggerToken;
    case 'expiredSession':
      return expiredSession(service, people.dealer);
    default:
      return newSessionOf(service, people[caller].person);
  }
}

async function expiredSession(service: TestService, { person }: Member): Promise<string> {
  const token = await newSessionOf(service, person);
  const { id } = await service.db
    .selectFrom('sessions')
    .select('id')
    .where('person_id', '=', person.id)
    .orderBy('id', 'desc')
    .executeTakeFirstOrThrow();
  const expires_at = new Date(Date.now() - 1000);
  await service.db.updateTable('sessions').set({ expires_at }).where('id', '=', id).execute();
  return token;
}
