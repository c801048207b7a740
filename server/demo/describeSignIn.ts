import { type Database, inScope } from '../database/openDatabase.ts';
import { DEMO_SIGN_IN } from './demoSignIn.ts';

/** How to sign in to the demo at an address; where its people are not in this installation, that it was not filled. */
export async function describeSignIn(database: Database, url: string): Promise<string> {
  const { accountName, people, guests, password } = DEMO_SIGN_IN;
  const all = [...people, ...guests];
  const known = await inScope(database, { spanning: 'first-account' })
    .db.selectFrom('directory')
    .select('email')
    .where(
      'email',
      'in',
      all.map(({ email }) => email),
    )
    .execute();
  if (known.length === 0) return 'The demo was left out: there is an account in this database already.';
  const width = Math.max(...all.map(({ email }) => email.length));
  return [
    `The demo: ${accountName}. Open ${url} and sign in as one of`,
    ...people.map(({ email, role, name }) => `  ${email.padEnd(width)}  ${name}, ${role}`),
    ...guests.map(
      ({ email, role, name, coach }) => `  ${email.padEnd(width)}  ${name}, ${role} of ${coach} alone`,
    ),
    `with the password  ${password}`,
  ].join('\n');
}
