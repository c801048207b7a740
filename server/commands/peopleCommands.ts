import { type Command, Option } from 'commander';
import type { Transaction } from 'kysely';
import { v7 as newId } from 'uuid';
import type { z } from 'zod';
import type { Tables } from '../../migrations/tables.ts';
import { invitePerson } from '../access/people/people.ts';
import { type AccountInScope, accountInScope } from '../access/scopes/scope.ts';
import { OperatorError } from '../operatorError.ts';
import { plainFault } from '../plainFault.ts';
import { ProblemError } from '../problems.ts';
import { PersonBody } from '../schemas/access.ts';
import { ROLES } from '../schemas/session.ts';
import { accountNamed } from './accountNamed.ts';
import { say, type Terminal } from './terminal.ts';
import { withInstallation } from './withDatabase.ts';

interface AddOptions {
  readonly email: string;
  readonly name: string;
  readonly role: string;
  readonly account?: string;
  readonly newAccount?: string;
  readonly json?: boolean;
}

export function addPeopleCommands(
  program: Command,
  environment: NodeJS.ProcessEnv,
  terminal: Terminal,
): void {
  const people = program.command('people').description('People who may sign in.');
  people
    .command('add')
    .description('Invite a person: prints a link by which it sets its password, once, within 7 days.')
    .requiredOption('--email <address>', 'what it will sign in with')
    .requiredOption('--name <name>', 'how others see it')
    .addOption(new Option('--role <role>', 'what it may do').choices(ROLES).default('dealer'))
    .option('--account <name or id>', 'whose colleague it becomes; needless where there is one account')
    .option('--new-account <name>', 'make an account of this name, with the person as its first dealer')
    .option('--json', 'print the result as JSON')
    .action(async (options: AddOptions) => {
      const body = bodyOf(options);
      const added = await withInstallation(environment, ({ db }) =>
        db.transaction().execute(async (trx) => invite(trx, await accountOf(trx, options), body)),
      );
      const path = `/join#${added.invitation}`;
      say(
        terminal,
        options.json,
        { ...added, path },
        `${added.person.name} joins with this link, after the service's own address:\n${path}`,
      );
    });
}

function bodyOf({ email, name, role, newAccount }: AddOptions): PersonBody {
  const read = PersonBody.safeParse({ email, name, role }, { error: plainFault });
  if (!read.success) throw new OperatorError(faultsOf(read.error));
  if (newAccount !== undefined && read.data.role !== 'dealer')
    throw new OperatorError('The first person of an account is a dealer.');
  return read.data;
}

async function invite(trx: Transaction<Tables>, accountId: AccountInScope, body: PersonBody) {
  try {
    return await invitePerson(trx, accountId, body);
  } catch (error) {
    if (error instanceof ProblemError) throw new OperatorError(error.message, { cause: error });
    throw error;
  }
}

/** The account that is meant, made now where a new one is asked for. */
async function accountOf(
  trx: Transaction<Tables>,
  { account, newAccount }: AddOptions,
): Promise<AccountInScope> {
  if (newAccount !== undefined) {
    const id = newId();
    await trx.insertInto('accounts').values({ id, name: newAccount }).execute();
    return accountInScope(id);
  }
  return accountNamed(trx, account);
}

function faultsOf({ issues }: z.ZodError): string {
  return issues.map(({ path, message }) => `--${path.join('.')}: ${message}`).join('\n');
}
