import { codeOf } from '../ingest/errorCode.ts';
import { readConfiguration } from './configuration.ts';
import { OperatorError } from './operatorError.ts';
import { startService } from './startService.ts';
import { whenParentEnds } from './whenParentEnds.ts';

const STOP_WITHIN_MS = 9500;
/** Those of npm that stand before this process for as long as it runs. */
const STARTED_BY = new Set(['start', 'demo']);

try {
  await main();
} catch (error) {
  failWith(error);
}

async function main(): Promise<void> {
  const configuration = readConfiguration(process.env);
  const end = new AbortController();
  let stop: (() => Promise<void>) | null = null;
  // A terminal's Ctrl-C comes twice, from itself and from npm: stopping begins once and is not hurried.
  const onSignal = (): void => {
    if (end.signal.aborted) return;
    end.abort();
    setTimeout(() => process.exit(1), STOP_WITHIN_MS).unref();
    if (stop !== null) stop().then(leave, failWith);
  };
  process.on('SIGTERM', onSignal);
  process.on('SIGINT', onSignal);
  if (STARTED_BY.has(process.env.npm_lifecycle_event ?? '')) whenParentEnds(onSignal);

  try {
    stop = await startService(configuration, { onTrouble: report, endWanted: end.signal });
  } catch (error) {
    // What it had started is stopped by now.
    if (end.signal.aborted && codeOf(error) === 'ABORT_ERR') leave();
    throw error;
  }
  if (end.signal.aborted) await stop().then(leave);
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
  console.error(error instanceof OperatorError ? error.message : error);
}
