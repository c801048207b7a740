import { Command, Option } from 'commander';
import { DecodeError } from '../../../ingest/decodeError.ts';
import type { BodyForm } from './bodies.ts';
import { forward, TokenRefused } from './forward.ts';
import { forwardLive } from './forwardLive.ts';
import { playCsv, simulate } from './recordings.ts';
import { Spool } from './spool.ts';

/** What the program ends with; 1 is for words that were wrong. */
const EXIT = { allStored: 0, wrongWords: 1, someRefused: 2, tokenRefused: 3, stoppedBefore: 4 } as const;

interface Words {
  readonly url: string;
  readonly token: string;
  readonly room?: string;
  readonly spool: string;
  readonly play?: string;
  readonly simulate?: string;
  readonly sides: string;
  readonly form: BodyForm;
  readonly live?: boolean;
  readonly speed: string;
  readonly startedAt?: string;
  readonly rateHz?: string;
  readonly direction?: string;
  readonly key?: string;
  readonly mostWaitS: string;
}

const program = new Command('logger')
  .description('A small logger: keeps strokes in a folder until the service says that they are stored.')
  .requiredOption('--url <url>', 'the service, such as http://127.0.0.1:8080')
  .addOption(new Option('--token <token>', "the logger's token").env('LOGGER_TOKEN').makeOptionMandatory())
  .option('--spool <folder>', 'where strokes wait; what lies there is sent first', './logger-spool')
  .option('--play <file.csv>', 'put the strokes of a recording into the spool (with --room)')
  .option('--simulate <number>', 'put so many strokes of an invented room into the spool (with --room)')
  .option('--room <id>', 'the room that they are of')
  .option('--sides <names>', 'sides of the invented room, with commas between', 'main')
  .option('--started-at <time>', 'when the recording began, where its times do not say')
  .option('--rate-hz <number>', 'samples a second of the recording, where it has no column of times')
  .option('--direction <direction>', 'of the recording: extend, retract, or one for each stroke')
  .option('--key <key>', "the recording's key; its file name unless said")
  .addOption(new Option('--form <form>', 'how strokes are sent').choices(['json', 'cbor']).default('json'))
  .option('--live', 'send each piece by piece, as it would happen')
  .option('--speed <number>', 'with --live: times quicker than it happened; 0: as quick as it goes', '1')
  .option('--most-wait-s <seconds>', 'the longest wait between two tries', '300')
  .addHelpText(
    'after',
    `
It ends with 0 when all is stored, 2 when the service refused some (they lie in the folder "refused" of the spool),
3 when it does not know the token, 4 when it was stopped before all was sent, 1 when it was called wrongly. Start it
again with the same spool, and it goes on where it was: nothing is lost, and nothing is stored twice.

  npm run logger -- --url http://127.0.0.1:8080 --token sll_... --room 018f... --simulate 4 --live`,
  )
  .showHelpAfterError();

const stopping = new AbortController();
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => stopping.abort());
program.action(async (words: Words) => {
  process.exitCode = await run(words);
});
await program.parseAsync();

async function run(words: Words): Promise<number> {
  const spool = new Spool(words.spool);
  await spool.open();
  try {
    for (const stroke of await recorded(words)) await spool.keep(stroke);
  } catch (error) {
    if (!(error instanceof DecodeError)) throw error;
    for (const { pointer, detail } of error.faults) console.error(`${pointer} ${detail}`);
    return EXIT.wrongWords;
  }
  const sending = {
    url: words.url.replace(/\/$/, ''),
    token: words.token,
    spool,
    form: words.form,
    mostWaitMs: 1000 * Number(words.mostWaitS),
    stopping: stopping.signal,
    speed: Number(words.speed),
    say: (line: string) => console.log(line),
  };
  try {
    const { stored, refused } = await (words.live ? forwardLive(sending) : forward(sending));
    console.log(`${stored} stored, ${refused} refused.`);
    return refused > 0 ? EXIT.someRefused : EXIT.allStored;
  } catch (error) {
    if (error instanceof TokenRefused) {
      console.error(error.message);
      return EXIT.tokenRefused;
    }
    if (!stopping.signal.aborted) throw error;
    console.error('Stopped; the rest waits in the spool.');
    return EXIT.stoppedBefore;
  }
}

async function recorded({ play, simulate: count, room, sides, ...said }: Words) {
  if (play === undefined && count === undefined) return [];
  if (room === undefined) return program.error('error: --room says which room the strokes are of');
  if (play === undefined) return simulate(Number(count), room, sides.split(','));
  const { key, startedAt, rateHz, direction } = said;
  const [side] = sides.split(',');
  return playCsv(play, { roomId: room, key, startedAt, rateHz, direction, side });
}
