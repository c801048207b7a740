import { stat } from 'node:fs/promises';
import type { Command } from 'commander';
import { isUuid } from '../../ingest/uuid.ts';
import { onOneConnection } from '../database/onOneConnection.ts';
import { ifThere } from '../ifThere.ts';
import { OperatorError } from '../operatorError.ts';
import { accountNamed } from './accountNamed.ts';
import { writeArchive } from './archive.ts';
import { type ImportedCounts, importExport } from './exchange/importExport.ts';
import {
  type ImportedRecordings,
  importRecordings,
  senderFor,
  sidesOf,
} from './exchange/importRecordings.ts';
import { writeExport } from './exchange/writeExport.ts';
import { refuseWritingOver } from './refuseWritingOver.ts';
import { say, type Terminal } from './terminal.ts';
import { withInstallation } from './withDatabase.ts';

interface ExportOptions {
  readonly account?: string;
  readonly coach?: string;
  readonly json?: boolean;
}

interface ImportOptions {
  readonly account?: string;
  readonly room?: string;
  readonly logger?: string;
  readonly rateHz?: string;
  readonly side?: string;
  readonly direction?: string;
  readonly json?: boolean;
}

export function addExchangeCommands(
  program: Command,
  environment: NodeJS.ProcessEnv,
  terminal: Terminal,
): void {
  program
    .command('export')
    .description("Write an account's coaches, or one of them, as JSON and CSV in a tar archive.")
    .argument('<file>', 'where to, such as lot.tar.gz; its folder must be there, the file must not')
    .option('--account <name or id>', 'whose; needless where there is one account')
    .option('--coach <id>', 'only this coach')
    .option('--json', 'print the result as JSON')
    .addHelpText('after', '\nThe archive explains itself in its README.txt. "import" takes it back.')
    .action(async (file: string, options: ExportOptions) => {
      const { coach = null } = options;
      if (coach !== null && !isUuid(coach)) throw new OperatorError(`${coach} is no id of a coach.`);
      await refuseWritingOver(file);
      const counts = await withInstallation(environment, async ({ db }) => {
        const accountId = await accountNamed(db, options.account);
        return writeArchive(file, (add) =>
          // Everything as of one moment.
          db
            .transaction()
            .setIsolationLevel('repeatable read')
            .execute((trx) =>
              writeExport(trx, { accountId, coachId: coach, now: new Date() }, add, terminal.progress),
            ),
        );
      });
      say(
        terminal,
        options.json,
        { file, ...counts },
        `${file}: ${counts.coaches} coaches, ${counts.rooms} rooms, ${counts.strokes} strokes.`,
      );
    });

  program
    .command('import')
    .description('Take in an export of this program, or a folder of CSV recordings of one room.')
    .argument('<from>', 'an export (.tar.gz), or a folder with .csv files')
    .option('--account <name or id>', 'into which account; needless where there is one')
    .option('--room <id>', 'for a folder: the room that was recorded')
    .option('--logger <id>', 'for a folder: what recorded it; needless where the coach has one logger')
    .option('--rate-hz <number>', 'for a folder: samples a second, where there is no column of times')
    .option(
      '--side <name>',
      'for a folder: the side that a column called amps means; needless where the room has one',
    )
    .option(
      '--direction <direction>',
      "for a folder: extend or retract, where the current's sign does not tell",
    )
    .option('--json', 'print the result as JSON')
    .addHelpText(
      'after',
      `
Twice the same changes nothing the second time. A recording's time is taken from its own column of times or from the
file's name (2026-05-02T16-20-11Z.csv); the name is also the stroke's key.`,
    )
    .action(async (from: string, options: ImportOptions) => {
      if (await isFolder(from)) await importFolder(environment, terminal, from, options);
      else await importArchive(environment, terminal, from, options);
    });
}

async function importArchive(
  environment: NodeJS.ProcessEnv,
  terminal: Terminal,
  file: string,
  { account, json }: ImportOptions,
): Promise<void> {
  const counts = await withInstallation(environment, ({ pool }) =>
    onOneConnection(pool, (db, client) =>
      db
        .transaction()
        .execute(async (trx) => importExport(trx, client, await accountNamed(trx, account), file)),
    ),
  );
  say(terminal, json, counts, importedInWords(counts));
}

async function importFolder(
  environment: NodeJS.ProcessEnv,
  terminal: Terminal,
  folder: string,
  options: ImportOptions,
): Promise<void> {
  const { room } = options;
  if (room === undefined || !isUuid(room))
    throw new OperatorError('Say which room was recorded, with --room <id>.');
  const result = await withInstallation(environment, async ({ db, pool }) => {
    const sender = await senderFor(db, room, options.logger);
    const recording = { ...options, roomId: room, roomSides: await sidesOf(db, room) };
    const client = await pool.connect();
    return importRecordings(client, sender, folder, recording, terminal.progress).finally(() =>
      client.release(),
    );
  });
  say(terminal, options.json, result, recordingsInWords(result));
  if (result.refused.length > 0) terminal.exitCode = 1;
}

function importedInWords({ coaches, rooms, services, stored, duplicate, loggers }: ImportedCounts): string {
  const lines = [
    `New here: ${coaches} coaches, ${rooms} rooms, ${services} services, ${stored} strokes.`,
    ...(duplicate > 0 ? [`${duplicate} strokes were there already.`] : []),
    ...loggers.map(({ name, token }) => `The logger "${name}" has a new token, shown this once: ${token}`),
  ];
  return lines.join('\n');
}

function recordingsInWords({ stored, duplicate, refused }: ImportedRecordings): string {
  const lines = [
    `${stored} strokes stored, ${duplicate} were there already.`,
    ...refused.map(({ file, why }) => `Refused: ${file}: ${why}`),
  ];
  return lines.join('\n');
}

async function isFolder(path: string): Promise<boolean> {
  const found = await ifThere(stat(path));
  if (found === null) throw new OperatorError(`There is no file or folder ${path}.`);
  return found.isDirectory();
}
