import { spawn } from 'node:child_process';
import { OperatorError } from '../../operatorError.ts';
import { commandLine, type RunAs } from './runAs.ts';

/** Runs a program of Postgres to its end; what it says is told only when it fails. */
export async function runProgram(way: RunAs, program: string, words: readonly string[]): Promise<void> {
  const child = spawn(...commandLine(way, program, words), {
    ...way.options,
    stdio: ['ignore', 'ignore', 'pipe'],
    // Ctrl-C in a terminal reaches every process of the group: this one must not be cut off in the middle.
    detached: true,
    cwd: '/',
  });
  let said = '';
  child.stderr?.on('data', (chunk: Buffer) => {
    said += chunk.toString();
  });
  const code = await new Promise<number | null>((resolve, reject) => {
    child.once('error', reject);
    child.once('close', resolve);
  });
  if (code !== 0) throw new OperatorError(`${program} failed: ${said.trim().replaceAll('\n', ' ')}`);
}
