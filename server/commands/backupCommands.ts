import { stat } from 'node:fs/promises';
import type { Command } from 'commander';
import { ifThere } from '../ifThere.ts';
import { OperatorError } from '../operatorError.ts';
import type { BackupDigests } from './backup/format.ts';
import { restoreBackup } from './backup/restoreBackup.ts';
import { writeBackup } from './backup/writeBackup.ts';
import { bytesInWords } from './bytesInWords.ts';
import { refuseWritingOver } from './refuseWritingOver.ts';
import { say, type Terminal } from './terminal.ts';
import { withDatabase } from './withDatabase.ts';

export function addBackupCommands(
  program: Command,
  environment: NodeJS.ProcessEnv,
  terminal: Terminal,
): void {
  program
    .command('backup')
    .description('Write everything that the installation holds, as of one moment, into one file.')
    .argument('<file>', 'where to; its folder must be there, the file must not')
    .option('--json', 'print the result as JSON')
    .addHelpText(
      'after',
      `
The file is read back and compared before it gets its name. It holds every person's address and the hashes of
passwords: keep it as you keep those.`,
    )
    .action(async (file: string, { json }: { json?: boolean }) => {
      await refuseWritingOver(file);
      const digests = await withDatabase(environment, async ({ pool }) => {
        const client = await pool.connect();
        return writeBackup(client, file, new Date(), terminal.progress).finally(() => client.release());
      });
      const { size } = await stat(file);
      const rows = rowsOf(digests);
      say(
        terminal,
        json,
        { file, bytes: size, rows, tables: digests },
        `${file}: ${rows} rows, ${bytesInWords(size)}.`,
      );
    });

  program
    .command('restore')
    .description('Put a backup into an empty database, all of it or nothing. The service must not run.')
    .argument('<file>', 'what backup wrote, by this version of the program or an older one')
    .option('--json', 'print the result as JSON')
    .action(async (file: string, { json }: { json?: boolean }) => {
      if ((await ifThere(stat(file))) === null) throw new OperatorError(`There is no file ${file}.`);
      const digests = await withDatabase(environment, (database) =>
        restoreBackup(database, file, terminal.progress),
      );
      const rows = rowsOf(digests);
      say(terminal, json, { file, rows, tables: digests }, `${rows} rows restored, each table compared.`);
    });
}

function rowsOf(digests: BackupDigests): number {
  return Object.values(digests).reduce((total, { rows }) => total + rows, 0);
}
