import { createHmac, timingSafeEqual } from 'node:crypto';
import { parse as uuidBytes } from 'uuid';
import { updatePerson } from '../access/people/updatePerson.ts';
import { ID_BYTES, idOfBytes } from '../access/tokens/idOfBytes.ts';
import { type Database, inScope } from '../database/openDatabase.ts';
import { notFound } from '../problems.ts';
import { type ReaderRow, readReader } from './reader.ts';

const PREFIX = 'slu_';
const SIGNATURE_BYTES = 32;

/** The secret of a link that ends a person's messages: who it is, signed with the key of the person's own row. */
export function unsubscribeToken(reader: Pick<ReaderRow, 'account_id' | 'id' | 'unsubscribe_key'>): string {
  const who = Buffer.concat([uuidBytes(reader.account_id), uuidBytes(reader.id)]);
  return PREFIX + Buffer.concat([who, signatureOf(who, reader.unsubscribe_key)]).toString('base64url');
}

/** Ends all that the person is mailed of its own accord. Once more changes nothing. Throws 404 for any other link. */
export async function unsubscribe(database: Database, token: string): Promise<void> {
  const bytes = token.startsWith(PREFIX) ? Buffer.from(token.slice(PREFIX.length), 'base64url') : Buffer.of();
  // Base64 can be written in several ways: only the one that was handed out counts.
  const isWhole =
    bytes.length === 2 * ID_BYTES + SIGNATURE_BYTES && PREFIX + bytes.toString('base64url') === token;
  if (!isWhole) throw notFound('link');
  const who = {
    accountId: idOfBytes(bytes.subarray(0, ID_BYTES)),
    personId: idOfBytes(bytes.subarray(ID_BYTES, 2 * ID_BYTES)),
  };
  const { db } = inScope(database, { accounts: [who.accountId] });
  const reader = await readReader(db, who);
  const signed = bytes.subarray(2 * ID_BYTES);
  if (
    reader === null ||
    !timingSafeEqual(signed, signatureOf(bytes.subarray(0, 2 * ID_BYTES), reader.unsubscribe_key))
  )
    throw notFound('link');
  await updatePerson(db, who, { notices_from: null, digest: false, silent_after_days: null });
}

function signatureOf(who: Buffer, key: Buffer): Buffer {
  return createHmac('sha256', key).update(who).digest();
}
