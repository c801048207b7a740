import { analysisBench } from './analysisBench.ts';
import { codecBench } from './codecBench.ts';
import { fuzzBench } from './fuzzBench.ts';
import { ingestBench } from './ingestBench.ts';
import { memoryBench } from './memoryBench.ts';
import { printTable } from './table.ts';
import { trendBench } from './trendBench.ts';

/**
 * `npm run bench`: ratios within one run, beside the aims. A name as argument runs that part alone, a number (0.1)
 * makes the parts for ingest and memory so much shorter.
 */
const wanted = process.argv.slice(2).filter((argument) => !Number(argument));
const part = Number(process.argv.slice(2).find((argument) => Number(argument)) ?? 1);

const PARTS: Record<string, () => Promise<void>> = {
  codec: async () => printTable('Samples', codecBench()),
  fuzz: async () => printTable('Decoders given whatever there is', fuzzBench()),
  analysis: async () => printTable('Analysis of one stroke', analysisBench()),
  trend: async () => printTable('Trend of a room with 10,000 strokes', await trendBench()),
  memory: async () => printTable('Memory of the service', await memoryBench(part)),
  ingest: async () =>
    printTable('Strokes a second (ratios to HTTP with a bare INSERT)', await ingestBench(part)),
};

for (const [name, run] of Object.entries(PARTS)) {
  if (wanted.length === 0 || wanted.includes(name)) await run();
}
