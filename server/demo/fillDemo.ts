import type { Kysely, Transaction } from 'kysely';
import type { PoolClient } from 'pg';
import { decodeStroke } from '../../ingest/json/stroke.ts';
import { prepareStroke, type Sender, storeStrokes } from '../../ingest/storeStrokes.ts';
import type { Tables } from '../../migrations/tables.ts';
import { addPerson, type NewPerson } from '../access/people/addPerson.ts';
import { createAccount } from '../access/people/createAccount.ts';
import { beginInstallation } from '../access/people/setUp.ts';
import type { PersonCaller } from '../access/scopes/caller.ts';
import type { AccountInScope } from '../access/scopes/scope.ts';
import { onOneConnection } from '../database/onOneConnection.ts';
import { type Database, inScope } from '../database/openDatabase.ts';
import { createCoach } from '../things/coaches.ts';
import { createGrant } from '../things/grants.ts';
import { createLogger } from '../things/loggers.ts';
import { createRoom } from '../things/rooms.ts';
import { createService } from '../things/services.ts';
import type { DemoCoach, DemoGuest, DemoRoom, DemoScenario } from './demoScenario.ts';
import { tellScenario } from './tellScenario.ts';

/**
 * Fills an empty installation with the demo scenario, through the very functions that requests go through, all or
 * nothing: a start that is broken off leaves it empty. Answers whether it did; with an account in it nothing is done.
 * `admin`, where one is configured, becomes one more dealer of the demo's account.
 */
export async function fillDemo(
  database: Database,
  now: Date,
  admin: Omit<NewPerson, 'role'> | null,
): Promise<boolean> {
  const { pool } = inScope(database, { spanning: 'first-account' });
  const filled = await onOneConnection(pool, (db, client) =>
    beginInstallation(db, async (trx) => {
      const scenario = tellScenario(now);
      const { accountId, technician } = await addPeople(trx, scenario, admin);
      const coachIds = new Map<string, string>();
      for (const coach of scenario.coaches)
        coachIds.set(coach.coach.name, await addCoach(trx, client, accountId, technician, coach));
      for (const guest of scenario.guests) await addGuest(trx, accountId, scenario.password, guest, coachIds);
      return true;
    }),
  );
  return filled === true;
}

/** Answers the account and who recorded the services. */
async function addPeople(
  db: Kysely<Tables>,
  { accountName, password, people }: DemoScenario,
  admin: Omit<NewPerson, 'role'> | null,
): Promise<{ accountId: AccountInScope; technician: PersonCaller }> {
  const [first, ...others] = people.map((person) => ({ ...person, password }));
  const { accountId, id: firstId } = await createAccount(db, { ...first, accountName });
  let technician: PersonCaller = { kind: 'person', accountId, personId: firstId, role: first.role };
  for (const other of others) {
    const { id: personId, role } = await addPerson(db, accountId, other);
    if (role === 'technician') technician = { ...technician, personId, role };
  }
  if (admin !== null) await addPerson(db, accountId, { ...admin, role: 'dealer' });
  return { accountId, technician };
}

/** Who accepted the dealer's invitation to see a coach. */
async function addGuest(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  password: string,
  { email, name, role, coach }: DemoGuest,
  coachIds: ReadonlyMap<string, string>,
): Promise<void> {
  const coachId = coachIds.get(coach);
  if (coachId === undefined) throw new Error(`The demo has no coach ${coach}.`);
  await createAccount(trx, { email, name, password });
  await createGrant(trx, accountId, coachId, { email, role });
}

/** Answers the coach's id. */
async function addCoach(
  trx: Transaction<Tables>,
  client: PoolClient,
  accountId: AccountInScope,
  technician: PersonCaller,
  { coach, logger, rooms }: DemoCoach,
): Promise<string> {
  const { id: coachId } = await createCoach(trx, accountId, coach);
  const { id: loggerId } = await createLogger(trx, accountId, coachId, logger);
  const sender: Sender = { accountId, senderId: loggerId, loggerId, coachId };
  const times: number[] = [];
  for (const room of rooms) {
    const { id: roomId } = await createRoom(trx, accountId, coachId, room.room);
    await sendStrokes(client, sender, roomId, room);
    for (const service of room.services) await createService(trx, technician, roomId, service);
    times.push(...room.strokes.map((stroke) => Date.parse(stroke.startedAt)));
  }
  await noteHeard(trx, sender, times);
  return coachId;
}

/** The logger was last heard when its latest stroke ran. */
async function noteHeard(
  trx: Transaction<Tables>,
  { accountId, senderId }: Sender,
  times: readonly number[],
): Promise<void> {
  if (times.length === 0) return;
  await trx
    .updateTable('loggers')
    .set({ last_seen_at: new Date(Math.max(...times)) })
    .where('account_id', '=', accountId)
    .where('id', '=', senderId)
    .execute();
}

/** Through the decoder, as if the logger had sent them. */
async function sendStrokes(
  client: PoolClient,
  sender: Sender,
  roomId: string,
  { strokes }: DemoRoom,
): Promise<void> {
  const outcomes = await storeStrokes(
    client,
    strokes.map((stroke) => prepareStroke(sender, decodeStroke({ ...stroke, roomId }, ''))),
  );
  const refused = outcomes.findIndex(({ outcome }) => outcome !== 'stored');
  if (refused >= 0) throw new Error(`The demo's stroke ${strokes[refused].key} was not stored.`);
}
