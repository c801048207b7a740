import { Command, CommanderError } from 'commander';
import { OperatorError } from '../operatorError.ts';
import { addBackupCommands } from './backupCommands.ts';
import { addDoctorCommand } from './doctorCommand.ts';
import { addExchangeCommands } from './exchangeCommands.ts';
import { addPeopleCommands } from './peopleCommands.ts';
import type { Terminal } from './terminal.ts';

/** Does what the words behind `npm run slideload --` ask for. */
export async function runCommandLine(
  words: readonly string[],
  environment: NodeJS.ProcessEnv,
  terminal: Terminal,
): Promise<void> {
  try {
    await commands(environment, terminal).parseAsync(words, { from: 'user' });
  } catch (error) {
    // Help, or words that were wrong: it has been said already.
    if (error instanceof CommanderError) terminal.exitCode = error.exitCode;
    else {
      terminal.exitCode = 1;
      terminal.err(isClear(error) ? error.message : stackOf(error));
    }
  }
}

/** Also what the system says of a file that was named: that it cannot be opened, or that the disk is full. */
function isClear(error: unknown): error is Error {
  if (!(error instanceof Error)) return false;
  return error instanceof OperatorError || ('syscall' in error && 'path' in error);
}

function commands(environment: NodeJS.ProcessEnv, terminal: Terminal): Command {
  const program = new Command('slideload')
    .description('Looks after an installation of Slideload.')
    .addHelpText(
      'after',
      `
The installation is the one that a service started here would serve: DATABASE_URL names its Postgres, or DATA_DIR the
folder with its own (./data unless set). A service may run meanwhile, unless a command says otherwise.

With --json a command prints one JSON document on standard output and nothing else there. It ends with 0 when it did
what was asked, else with 1 and a line on standard error that says why.`,
    )
    .configureOutput({
      writeOut: (text) => terminal.out(text.trimEnd()),
      writeErr: (text) => terminal.err(text.trimEnd()),
    })
    .exitOverride()
    .showHelpAfterError();
  addBackupCommands(program, environment, terminal);
  addExchangeCommands(program, environment, terminal);
  addPeopleCommands(program, environment, terminal);
  addDoctorCommand(program, environment, terminal);
  return program;
}

function stackOf(error: unknown): string {
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}
