import { hash, verify } from '@node-rs/argon2';

/**
 * Argon2id with 19 MiB, two passes and one lane: the least that RFC 9106 and the OWASP password storage cheat sheet
 * (2024) agree on for a server that also has other work.
 */
const COST = { memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

export function hashPassword(password: string): Promise<string> {
  return hash(password, COST);
}

let nobodysHash: Promise<string> | null = null;

/** Whether the password is right. An unknown person (null) takes the same time and is always wrong. */
export async function isPassword(storedHash: string | null, password: string): Promise<boolean> {
  nobodysHash ??= hashPassword('the password of nobody at all');
  const right = await verify(storedHash ?? (await nobodysHash), password);
  return right && storedHash !== null;
}
