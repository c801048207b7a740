import { dictionary } from '@zxcvbn-ts/language-common';
import { invalidField } from '../../problems.ts';
import { Password } from '../../schemas/session.ts';

let common: ReadonlySet<string> | null = null;

/**
 * Refuses a password that many people use, or that whoever knows the address would try first. Shorter ones than may be
 * set need no entry. Throws the 422 problem at `pointer`.
 */
export function refuseCommonPassword(password: string, email: string, pointer: string): void {
  const plain = password.toLowerCase();
  common ??= new Set(dictionary['passwords-common'].filter((each) => Password.safeParse(each).success));
  const [name] = email.toLowerCase().split('@');
  const isEasy = common.has(plain) || plain === email.toLowerCase() || plain === name;
  if (isEasy) throw invalidField(pointer, 'Too many people use this password: take another one.');
}
