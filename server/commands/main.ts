import { runCommandLine } from './commandLine.ts';
import { ourTerminal } from './terminal.ts';

const terminal = ourTerminal();
await runCommandLine(process.argv.slice(2), process.env, terminal);
process.exitCode = terminal.exitCode;
