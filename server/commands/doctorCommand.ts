import type { Command } from 'commander';
import { readConfiguration } from '../configuration.ts';
import { examine } from './doctor/examine.ts';
import { findingsInWords } from './doctor/finding.ts';
import { say, type Terminal } from './terminal.ts';

export function addDoctorCommand(program: Command, environment: NodeJS.ProcessEnv, terminal: Terminal): void {
  program
    .command('doctor')
    .description('Say what is wrong with this installation, and what to do about it. Changes nothing.')
    .option('--json', 'print the findings as JSON')
    .addHelpText('after', '\nIt ends with 1 when something is broken.')
    .action(async ({ json }: { json?: boolean }) => {
      const findings = await examine(readConfiguration(environment), new Date());
      say(terminal, json, { findings }, findingsInWords(findings));
      if (findings.some(({ state }) => state === 'broken')) terminal.exitCode = 1;
    });
}
