import { readConfiguration } from './configuration.ts';
import { DatabaseUnfitError } from './database/migrate.ts';
import { StartError } from './database/startError.ts';
import { startService } from './startService.ts';

const STOP_WITHIN_MS = 9500;

try {
  await main();
} catch (error) {
  failWith(error);
}

async function main(): Promise<void> {
  const configuration = readConfiguration(process.env);
  let stopWanted = false;
  let stop: (() => Promise<void>) | null = null;
  // A terminal's Ctrl-C comes twice, from itself and from npm: stopping begins once and is not hurried.
  const onSignal = (): void => {
    if (stopWanted) return;
    stopWanted = true;
    setTimeout(() => process.exit(1), STOP_WITHIN_MS).unref();
    if (stop !== null) stop().then(leave, failWith);
  };
  process.on('SIGTERM', onSignal);
  process.on('SIGINT', onSignal);

  stop = await startService(configuration, { onTrouble: report });
  if (stopWanted) await stop().then(leave);
}

function leave(): void {
  process.exit(0);
}

function failWith(error: unknown): void {
  report(error);
  process.exit(1);
}

/** One line for what whoever starts it can put right; everything for what only we can. */
function report(error: unknown): void {
  const isClear = error instanceof StartError || error instanceof DatabaseUnfitError;
  console.error(isClear ? error.message : error);
}
