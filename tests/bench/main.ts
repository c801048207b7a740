import { asBuilt } from './asBuilt.ts';
import { printTable } from './table.ts';

/**
 * `npm run bench`: ratios within one run, beside the aims. A name as argument runs that part alone, a number (0.1)
 * makes the parts for ingest and memory so much shorter.
 *
 * Each part is loaded once it is its turn: what the later ones load hands memory over between threads, after which the engine
 * takes twice as long for a plain pass over an array, and whatever is held against one would seem half as dear.
 */
const wanted = process.argv.slice(2).filter((argument) => !Number(argument));
const part = Number(process.argv.slice(2).find((argument) => Number(argument)) ?? 1);

const PARTS: Record<string, () => Promise<void>> = {
  codec: async () => printTable('Samples', (await import('./codecBench.ts')).codecBench()),
  fuzz: async () =>
    printTable('Decoders given whatever there is', (await import('./fuzzBench.ts')).fuzzBench()),
  analysis: async () =>
    printTable(
      'Analysis of one stroke',
      (await asBuilt<typeof import('./analysisBench.ts')>('analysisBench')).analysisBench(),
    ),
  trend: async () =>
    printTable('Trend of a room with 10,000 strokes', await (await import('./trendBench.ts')).trendBench()),
  memory: async () =>
    printTable('Memory of the service', await (await import('./memoryBench.ts')).memoryBench(part)),
  ingest: async () =>
    printTable(
      'Strokes a second (ratios to HTTP with a bare INSERT)',
      await (await import('./ingestBench.ts')).ingestBench(part),
    ),
};

for (const [name, run] of Object.entries(PARTS)) {
  if (wanted.length === 0 || wanted.includes(name)) await run();
}
