import { runCommandLine } from '../../server/commands/commandLine.ts';

export interface CommandAnswer {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Does what `npm run slideload -- …` does, on the database of that address, and answers what it printed. */
export async function runCommand(databaseUrl: string, ...words: string[]): Promise<CommandAnswer> {
  const out: string[] = [];
  const err: string[] = [];
  const terminal = {
    out: (text: string) => out.push(text),
    err: (text: string) => err.push(text),
    progress: { begin: () => undefined, add: () => undefined, end: () => undefined },
    exitCode: 0,
  };
  await runCommandLine(words, { DATABASE_URL: databaseUrl }, terminal);
  return { code: terminal.exitCode, out: out.join('\n'), err: err.join('\n') };
}
