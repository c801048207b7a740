import { hash, verify } from '@node-rs/argon2';
import { HashingTurns } from './hashingTurns.ts';

/**
 * Argon2id with 19 MiB, two passes and one lane: the least that RFC 9106 and the OWASP password storage cheat sheet
 * (2024) agree on for a server that also has other work.
 */
const COST = { memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

const turns = new HashingTurns();

/** For work that checks a password: `isPassword` is called within it. */
export function inHashingTurn<Result>(work: () => Promise<Result>): Promise<Result> {
  return turns.run(work);
}

/** Not within a transaction, nor within a turn. */
export function hashPassword(password: string): Promise<string> {
  return inHashingTurn(() => hash(password, COST));
}

/** Waits for nobody's turn: for the few that no stranger can ask for. */
export function hashPasswordAtOnce(password: string): Promise<string> {
  return hash(password, COST);
}

let nobodysHash: Promise<string> | null = null;

/** Whether the password is right, asked within a turn. An unknown person (null) takes the same time and is always wrong. */
export async function isPassword(storedHash: string | null, password: string): Promise<boolean> {
  nobodysHash ??= hashPasswordAtOnce('the password of nobody at all');
  const right = await verify(storedHash ?? (await nobodysHash), password);
  return right && storedHash !== null;
}
